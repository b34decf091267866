import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { MEDICINES_FILE, medicinesFile } from '../../../server/formulary/own-medicines.ts';
import { liquidViews, packetViews, regimenViews } from '../../../server/view/regimen-view.ts';
import { BOTTLE, RULE, SMALL_PACKET } from '../../core/make/entered.ts';
import { bringToOffer, type TestBarn, testBarn } from '../make/test-barn.ts';

function barnWith(path = mkdtempSync(join(tmpdir(), 'byreside-own-'))) {
  const barn = testBarn(':memory:', undefined, { medicines: medicinesFile(path) });
  return { ...barn, file: join(path, MEDICINES_FILE) };
}
const memory = ({ barn }: TestBarn) => barn.context.memory;
const keepPacket = {
  type: 'keep-presentation',
  medicineId: 'levamisole',
  presentation: SMALL_PACKET,
} as const;
const keepBottle = { type: 'keep-presentation', medicineId: 'fenbendazole', presentation: BOTTLE } as const;
const keepRule = { type: 'keep-rule', medicineId: 'levamisole', rule: RULE } as const;
const approve = (regimenId: string) =>
  ({ type: 'approve', regimenId, direction: 'label', meatHours: null, milkHours: null }) as const;
const PACKET = 'own-levamisole-packet-1';
const GOAT_RULE = 'own-levamisole-goat-1';

describe('a packet entered at Shed', () => {
  test('can be mixed without a new start, and stands in the file with who entered it', () => {
    const test = barnWith();
    expect(test.send(keepPacket).ok).toBe(true);
    expect(test.send({ type: 'mix-start', packetId: PACKET }).ok).toBe(true);
    const [entry] = JSON.parse(readFileSync(test.file, 'utf8'));
    expect(entry).toMatchObject({
      addTo: 'levamisole',
      presentations: [{ id: PACKET, activeGrams: { value: 11.7, evidence: 'entered' } }],
    });
    expect(entry.presentations[0].activeGrams.source).toContain('Wren, 2027-04-12');
  });

  test('is not kept twice', () => {
    const test = barnWith();
    test.send(keepPacket);
    expect(test.send(keepPacket)).toMatchObject({ code: 'already-there' });
  });

  test('is refused with the schema’s own sentence where it contradicts itself', () => {
    const presentation = { ...SMALL_PACKET, grossGrams: 11.7, activeGrams: 13 };
    expect(barnWith().send({ ...keepPacket, presentation })).toMatchObject({
      code: 'contradicts-itself',
      message: expect.stringContaining('the active weighs less than the whole powder'),
    });
    const strengths = { ...BOTTLE, percent: 4.45 };
    expect(barnWith().send({ ...keepBottle, presentation: strengths })).toMatchObject({
      message: expect.stringContaining('10 mg/mL are 1 %'),
    });
  });

  test('is not taken out of use while a jug of it is mixed or in use, and then is offered no more', () => {
    const test = barnWith();
    test.send(keepPacket);
    test.send({ type: 'mix-start', packetId: PACKET });
    expect(test.send({ type: 'retire-own', ownId: PACKET })).toMatchObject({ code: 'still-in-service' });
    test.send({ type: 'mix-cancel' });
    expect(test.send({ type: 'retire-own', ownId: PACKET }).ok).toBe(true);
    expect(test.send({ type: 'mix-start', packetId: PACKET })).toMatchObject({ code: 'no-such-packet' });
    const { formulary, retiredIds } = memory(test);
    expect(packetViews(formulary, retiredIds).map(({ id }) => id)).toEqual(['levamisole-52g']);
    expect(packetViews(formulary).map(({ id }) => id)).toContain(PACKET);
  });

  test('may be entered again once it was retired, under another id', () => {
    const test = barnWith();
    test.send(keepPacket);
    test.send({ type: 'retire-own', ownId: PACKET });
    expect(test.send(keepPacket).ok).toBe(true);
    expect(memory(test).ownIds).toContain('own-levamisole-packet-2');
  });
});

describe('a bottle entered at Shed', () => {
  const OWN = 'own-fenbendazole-bottle-1';
  const open = {
    type: 'open-bottle',
    presentationId: OWN,
    volumeMl: 250,
    expiry: { year: 2028, month: 1 },
  } as const;

  test('is opened like any other, and holds its place while it is in use', () => {
    const test = barnWith();
    test.send(keepBottle);
    expect(test.send(open).ok).toBe(true);
    const [bottle] = memory(test).jugs;
    expect(bottle).toMatchObject({ packetId: OWN, strength: { value: 45.5 } });
    expect(test.send({ type: 'retire-own', ownId: OWN })).toMatchObject({ code: 'still-in-service' });
    test.send({ type: 'jug-discard', jugId: bottle?.id ?? '' });
    expect(test.send({ type: 'retire-own', ownId: OWN }).ok).toBe(true);
    expect(test.send(open)).toMatchObject({ code: 'no-such-bottle' });
    const { formulary, retiredIds } = memory(test);
    expect(liquidViews(formulary, retiredIds).map(({ id }) => id)).not.toContain(OWN);
  });
});

describe('a rule entered at Shed', () => {
  test('doses nothing until it is approved, and then in place of the one before', () => {
    const test = barnWith();
    expect(test.send(keepRule).ok).toBe(true);
    expect(memory(test).approvals.map(({ regimenId }) => regimenId)).toEqual(['levamisole-goat']);
    expect(test.send(approve(GOAT_RULE)).ok).toBe(true);
    expect(memory(test).approvals.map(({ regimenId }) => regimenId)).toEqual([GOAT_RULE]);
    bringToOffer(test);
    expect(memory(test).round.phase).toMatchObject({
      offer: { regimen: { id: GOAT_RULE, target: { value: 5 } } },
    });
  });

  test('that was given to an animal stays with its record when it is retired', () => {
    const test = barnWith();
    test.send(keepRule);
    test.send(approve(GOAT_RULE));
    test.send({ type: 'give', offerId: bringToOffer(test), outcome: 'whole' });
    expect(test.send({ type: 'retire-own', ownId: GOAT_RULE })).toMatchObject({ code: 'still-approved' });
    test.send({ type: 'withdraw-approval', regimenId: GOAT_RULE });
    expect(test.send({ type: 'retire-own', ownId: GOAT_RULE }).ok).toBe(true);
    expect(test.send(approve(GOAT_RULE))).toMatchObject({ code: 'no-such-regimen' });
    const { recent, formulary, approvals, retiredIds } = memory(test);
    expect(recent[0]).toMatchObject({ treatment: { offer: { regimen: { id: GOAT_RULE } } } });
    expect(test.store.dayBook.newest(1)[0]).toMatchObject({
      treatment: { offer: { regimen: { id: GOAT_RULE } } },
    });
    expect(regimenViews(formulary, approvals, retiredIds).map(({ id }) => id)).not.toContain(GOAT_RULE);
  });

  test.each([
    ['0.2 mg/kg printed as 0.91 mg/lb', { mgPerKg: 0.2, mgPerLb: 0.91 }, 'the two rates disagree'],
    ['a milk time of nothing', { milk: { kind: 'hours', hours: 0 } } as const, 'never nothing'],
    ['a ceiling below the target', { ceiling: 4 }, 'above the target'],
  ])('is refused with its reason for %s, and nothing is written', (_what, over, says) => {
    const test = barnWith();
    const refused = test.send({ ...keepRule, rule: { ...RULE, ...over } });
    expect(refused).toMatchObject({ code: 'contradicts-itself', message: expect.stringContaining(says) });
    expect(memory(test).ownIds.size).toBe(0);
  });

  test.each([
    ['an unknown medicine', { ...keepRule, medicineId: 'no-such' }, 'no-such-medicine'],
    [
      'a presentation of another medicine',
      { ...keepRule, rule: { ...RULE, presentationId: 'fenbendazole-100' } },
      'no-such-packet',
    ],
  ])('is refused for %s', (_what, intent, code) => {
    expect(barnWith().send(intent)).toMatchObject({ code });
  });
});

describe('what ships', () => {
  test.each(['levamisole-goat', 'levamisole-52g', 'no-such'])('is never retired: %s', (ownId) => {
    expect(barnWith().send({ type: 'retire-own', ownId })).toMatchObject({ code: 'not-our-own' });
  });
});

describe('a file that cannot be written', () => {
  test('changes nothing in memory, and the same press may be tried again', () => {
    const path = mkdtempSync(join(tmpdir(), 'byreside-own-'));
    mkdirSync(join(path, `${MEDICINES_FILE}.new`));
    const test = barnWith(path);
    const before = memory(test);
    expect(test.send({ ...keepPacket, id: 'once' })).toMatchObject({ code: 'not-written' });
    expect(memory(test)).toBe(before);
    const healed = testBarn(':memory:', undefined, {
      medicines: medicinesFile(mkdtempSync(join(tmpdir(), 'b-'))),
    });
    expect(healed.send({ ...keepPacket, id: 'once' }).ok).toBe(true);
  });

  test('because a person left it half edited is not written over', () => {
    const path = mkdtempSync(join(tmpdir(), 'byreside-own-'));
    writeFileSync(join(path, MEDICINES_FILE), '[{ "addTo": ');
    const test = barnWith(path);
    expect(test.send(keepPacket)).toMatchObject({ code: 'medicines-unreadable' });
    expect(readFileSync(test.file, 'utf8')).toBe('[{ "addTo": ');
  });
});

test('the veterinarians named in approvals are known again, the latest first, though withdrawn', () => {
  const test = barnWith();
  const by = (vet: string | null) =>
    test.send({ ...approve('levamisole-goat'), direction: 'veterinarian', vet });
  by('Dr Sorrel');
  by('Dr Yarrow');
  by(null);
  test.send({ type: 'withdraw-approval', regimenId: 'levamisole-goat' });
  expect(memory(test).vets).toEqual(['Dr Yarrow', 'Dr Sorrel']);
  expect(test.store.approvals.vets()).toEqual(['Dr Yarrow', 'Dr Sorrel']);
});
