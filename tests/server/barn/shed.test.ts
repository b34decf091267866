import { expect, test } from 'vitest';
import { bringToOffer, GOAT, testBarn, type Wish } from '../make/test-barn.ts';

const ENROL = { type: 'enrol', name: '31', species: 'goat', class: 'young', inMilk: false } as const;

test('an animal enrolled with a tag that was just read is known at its next read', () => {
  const barn = testBarn();
  expect(barn.send({ type: 'read-tag', tag: '998000000000888' })).toMatchObject({ code: 'no-such-tag' });
  expect(barn.barn.context.memory.unknownTag?.tag).toBe('998000000000888');
  expect(barn.send({ ...ENROL, tag: '998000000000888' }).ok).toBe(true);
  expect(barn.barn.context.memory.unknownTag).toBeNull();
  barn.send({ type: 'take-jug', jugId: 'jug-1' });
  barn.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  expect(barn.send({ type: 'read-tag', tag: '998000000000888' }).ok).toBe(true);
});

test.each([
  ['its name is taken', { ...ENROL, name: GOAT.name, tag: null }, 'name-in-use'],
  ['its tag is worn by another', { ...ENROL, tag: GOAT.tag }, 'tag-in-use'],
  ['its tag is a test code', { ...ENROL, tag: '999000000000001' }, 'tag-refused'],
  ['its tag number is too large', { ...ENROL, tag: '998999999999999' }, 'tag-refused'],
])('an animal is not enrolled when %s, and nothing is written', (_why, intent, code) => {
  const barn = testBarn();
  expect(barn.send(intent)).toMatchObject({ ok: false, code });
  expect(barn.store.animals.all()).toHaveLength(2);
});

test('an extra-label rule cannot be approved on the label', () => {
  const barn = testBarn();
  const approval = {
    type: 'approve',
    regimenId: 'levamisole-goat',
    meatHours: null,
    milkHours: null,
  } as const;
  expect(barn.send({ ...approval, direction: 'label' })).toMatchObject({ code: 'needs-veterinarian' });
});

test('withdrawing the approval under an offer ends it, and no dose is offered until it is approved again', () => {
  const barn = testBarn();
  const offerId = bringToOffer(barn);
  barn.send({ type: 'withdraw-approval', regimenId: 'levamisole-goat' });
  expect(barn.barn.context.memory.round.phase).toMatchObject({ step: 'cautions' });
  expect(barn.send({ type: 'give', offerId, outcome: 'whole' })).toMatchObject({ code: 'offer-ended' });
  expect(barn.barn.context.memory.recent).toEqual([]);
});

test('the language of the screen is kept, the voice follows it, and may be set to another', () => {
  const barn = testBarn();
  const settings = () => barn.barn.context.memory.settings;
  expect(barn.send({ type: 'set-language', language: 'es' }).ok).toBe(true);
  expect(barn.store.settings.read(settings())).toMatchObject({ language: 'es', voice: { language: 'es' } });
  expect(barn.send({ type: 'set-voice', voice: { ...settings().voice, language: 'en' } }).ok).toBe(true);
  expect(barn.store.settings.read(settings())).toMatchObject({ language: 'es', voice: { language: 'en' } });
});

test('syringes, person, face and unit are kept', () => {
  const barn = testBarn();
  expect(barn.send({ type: 'set-syringes', syringeIds: ['syringe-12-by-0.2', 'syringe-12-by-0.2'] }).ok).toBe(
    true,
  );
  expect(barn.send({ type: 'set-person', name: 'Finch' }).ok).toBe(true);
  expect(barn.send({ type: 'set-face', face: 'glare' }).ok).toBe(true);
  expect(barn.send({ type: 'set-weight-unit', unit: 'lb' }).ok).toBe(true);
  expect(barn.store.settings.read(barn.barn.context.memory.settings)).toMatchObject({
    face: 'glare',
    weightUnit: 'lb',
    person: 'Finch',
    syringeIds: ['syringe-12-by-0.2'],
    safetyRead: false,
    scaleCheckDays: 30,
    scaleCheckStops: false,
  });
});

test.each([
  [{ type: 'set-syringes', syringeIds: ['syringe-7-by-0.3'] } as Wish, 'no-such-syringe'],
  [{ type: 'set-person', name: 'Stranger' } as Wish, 'no-such-person'],
  [{ type: 'tray', action: { do: 'walk-off' } } as Wish, 'demo-only'],
  [{ type: 'jug-discard', jugId: 'jug-9' } as Wish, 'no-such-jug'],
  [
    { type: 'approve', regimenId: 'x', direction: 'label', meatHours: null, milkHours: null } as const,
    'no-such-regimen',
  ],
])('%j is refused as %s', (intent, code) => {
  expect(testBarn().send(intent)).toMatchObject({ ok: false, code });
});

test('a jug poured away ends the round it is in hand for and keeps the dose shown answerable', () => {
  const barn = testBarn();
  const offerId = bringToOffer(barn);
  expect(barn.send({ type: 'jug-discard', jugId: 'jug-1' }).ok).toBe(true);
  expect(barn.barn.context.memory.round).toMatchObject({
    phase: { step: 'no-jug' },
    unanswered: [{ id: offerId }],
  });
  expect(barn.send({ type: 'take-jug', jugId: 'jug-1' })).toMatchObject({ code: 'jug-out-of-life' });
});
