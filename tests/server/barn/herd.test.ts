import { describe, expect, test } from 'vitest';
import { newcomer } from '../../../core/herd/herd-animal.ts';
import { DAY_MS } from '../../../core/moment.ts';
import { loadMemory } from '../../../server/barn/memory.ts';
import { adviceNow } from '../../../server/herd/advice-now.ts';
import { animalPage, whomView } from '../../../server/view/animal-page.ts';
import { herdView } from '../../../server/view/animal-view.ts';
import { stateView } from '../../../server/view/state-view.ts';
import { makeJug } from '../../core/make/jug.ts';
import { given } from '../make/book.ts';
import { quietStanding } from '../make/quiet.ts';
import { bringToOffer, GOAT, type TestBarn, testBarn } from '../make/test-barn.ts';

const NOTHING = { eyelid: null, body: null, soiling: null, jaw: null, coat: null } as const;
const herdOf = (test: TestBarn) => test.barn.context.memory;
const onFarm = (test: TestBarn, id: string) => herdOf(test).animals.find((animal) => animal.id === id);
/** Memory as a start of the program would make it from the disk. */
const afterRestart = (test: TestBarn) => loadMemory(test.store, herdOf(test).settings);

describe('what is kept of an animal', () => {
  test('is on disk and in memory alike', () => {
    const barn = testBarn();
    barn.send({ type: 'edit-animal', animalId: GOAT.id, edit: { what: 'pen', pen: 'north' } });
    barn.send({ type: 'edit-animal', animalId: GOAT.id, edit: { what: 'mark', mark: 'red' } });
    barn.send({ type: 'edit-animal', animalId: GOAT.id, edit: { what: 'milk', inMilk: true } });
    barn.send({
      type: 'edit-animal',
      animalId: GOAT.id,
      edit: { what: 'day', day: 'bred', on: '2027-03-01' },
    });
    barn.send({ type: 'retag', animalId: GOAT.id, tag: '998000000000999' });
    barn.send({ type: 'retag-visual', animalId: GOAT.id, lost: null, fresh: '12' });
    expect(onFarm(barn, GOAT.id)).toMatchObject({
      pen: 'north',
      mark: 'red',
      inMilk: true,
      bredAtMs: Date.UTC(2027, 2, 1),
      tag: '998000000000999',
      visualTags: ['12'],
      formerTags: [{ number: GOAT.tag, why: 'lost' }],
    });
    expect(afterRestart(barn).animals).toEqual(herdOf(barn).animals);
  });

  test.each([
    [
      'a day to come',
      { type: 'edit-animal', edit: { what: 'day', day: 'bred', on: '2027-05-01' } },
      'day-in-future',
    ],
    ['a name in use', { type: 'edit-animal', edit: { what: 'name', name: 'campion' } }, 'name-in-use'],
    ['no tag', { type: 'retag', tag: '123' }, 'tag-refused'],
    ['the tag it wears', { type: 'retag', tag: GOAT.tag ?? '' }, 'same-tag'],
    ['no score', { type: 'score', scored: NOTHING }, 'nothing-scored'],
  ] as const)('is not changed to %s', (_what, wish, code) => {
    const barn = testBarn();
    const before = barn.store.animals.all();
    expect(barn.send({ ...wish, animalId: GOAT.id })).toMatchObject({ ok: false, code });
    expect(barn.store.animals.all()).toEqual(before);
  });

  test('is what a dose on offer rests on: in milk now, the offer is made anew', () => {
    const barn = testBarn();
    const offerId = bringToOffer(barn);
    barn.send({ type: 'edit-animal', animalId: GOAT.id, edit: { what: 'milk', inMilk: true } });
    expect(barn.send({ type: 'give', offerId, outcome: 'whole' })).toMatchObject({ code: 'offer-ended' });
  });
});

describe('a tag that was lost', () => {
  test('and is read again names no animal by itself: the screen says who lost it, and the person who it is', () => {
    const barn = testBarn();
    barn.send({ type: 'retag', animalId: GOAT.id, tag: '998000000000999' });
    barn.send({ type: 'take-jug', jugId: 'jug-1' });
    barn.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
    expect(barn.send({ type: 'read-tag', tag: GOAT.tag ?? '' })).toMatchObject({
      ok: false,
      code: 'lost-tag',
    });
    const standing = quietStanding(barn.barn.context);
    expect(stateView(barn.barn.context, standing).shed).toMatchObject({
      unknownTag: GOAT.tag,
      unknownTagOf: [GOAT.id],
    });
    expect(animalPage(barn.barn.context, GOAT.id)?.formerTags).toEqual([GOAT.tag]);
  });

  test('and is worn again leaves both numbers in its history', () => {
    const barn = testBarn();
    barn.send({ type: 'retag', animalId: GOAT.id, tag: '998000000000999' });
    expect(barn.send({ type: 'retag', animalId: GOAT.id, tag: GOAT.tag ?? '' }).ok).toBe(true);
    expect(barn.send({ type: 'read-tag', tag: '998000000000999' })).toMatchObject({ code: 'lost-tag' });
    expect(onFarm(barn, GOAT.id)?.tag).toBe(GOAT.tag);
  });
});

describe('a number two animals carry', () => {
  test('is told at both, until one has another', () => {
    const barn = testBarn();
    const name = onFarm(barn, 'goat-2')?.name ?? '';
    const shares = () => {
      const view = animalPage(barn.barn.context, GOAT.id)?.animal.shares;
      return [view, animalPage(barn.barn.context, 'goat-2')?.animal.shares];
    };
    expect(shares()).toEqual([[], []]);
    barn.send({ type: 'retag-visual', animalId: GOAT.id, lost: null, fresh: name });
    expect(shares()).toEqual([['goat-2'], [GOAT.id]]);
    barn.send({ type: 'retag-visual', animalId: GOAT.id, lost: name, fresh: '99' });
    expect(shares()).toEqual([[], []]);
  });
});

describe('an animal that left', () => {
  test('is kept, is not dosed any more, and leaves its name and tag free', () => {
    const barn = testBarn();
    expect(barn.send({ type: 'leave-herd', animalId: GOAT.id, how: 'sold' }).ok).toBe(true);
    expect(onFarm(barn, GOAT.id)).toBeUndefined();
    expect(barn.send({ type: 'read-tag', tag: GOAT.tag ?? '' })).toMatchObject({ code: 'no-such-tag' });
    expect(barn.send({ type: 'leave-herd', animalId: GOAT.id, how: 'died' })).toMatchObject({
      code: 'animal-gone',
    });
    const { name, species, class: kind, tag, inMilk } = GOAT;
    expect(barn.send({ type: 'enrol', name, species, class: kind, tag, inMilk }).ok).toBe(true);
    expect(animalPage(barn.barn.context, GOAT.id)).toMatchObject({ life: 'sold', animal: { name } });
    expect(afterRestart(barn).gone.map(({ id }) => id)).toEqual([GOAT.id]);
  });

  test('keeps its treatments under its name', () => {
    const barn = testBarn();
    const offerId = bringToOffer(barn);
    barn.send({ type: 'give', offerId, outcome: 'whole' });
    barn.send({ type: 'leave-herd', animalId: GOAT.id, how: 'died' });
    expect(animalPage(barn.barn.context, GOAT.id)?.treatments).toMatchObject([{ animalName: GOAT.name }]);
    expect(afterRestart(barn).recent).toHaveLength(1);
  });
});

describe('a weight held', () => {
  test('is kept where no dose went by it, with its uncertainty', () => {
    const barn = testBarn();
    bringToOffer(barn, 15_400);
    barn.send({ type: 'skip', reason: 'not-needed' });
    const [weighing] = barn.store.weighings.newest(GOAT.id, 5);
    expect(weighing).toMatchObject({ mass: { value: 15_400 }, method: 'scale' });
    expect(weighing?.uncertainty?.value).toBeGreaterThan(0);
    expect(onFarm(barn, GOAT.id)?.lastWeight?.mass.value).toBe(15_400);
    expect(afterRestart(barn).animals).toEqual(herdOf(barn).animals);
  });

  test('stands in the day book alone where a dose went by it, and shows once', () => {
    const barn = testBarn();
    const offerId = bringToOffer(barn, 15_400);
    barn.send({ type: 'give', offerId, outcome: 'whole' });
    barn.send({ type: 'next' });
    expect(barn.store.weighings.newest(GOAT.id, 5)).toMatchObject([{ method: 'imported' }]);
    expect(animalPage(barn.barn.context, GOAT.id)?.weighings.map(({ grams }) => grams)).toEqual([
      15_400, 15_000,
    ]);
  });

  test('of an animal that was named wrongly goes to the one named after', () => {
    const barn = testBarn();
    const offerId = bringToOffer(barn, 15_400);
    barn.send({ type: 'give', offerId, outcome: 'whole' });
    const treatmentId = herdOf(barn).recent[0]?.treatment.id ?? '';
    barn.send({ type: 'correct', treatmentId, what: { kind: 'wrong-animal', animalId: 'goat-2' } });
    expect(animalPage(barn.barn.context, GOAT.id)?.weighings.map(({ grams }) => grams)).toEqual([15_000]);
    expect(animalPage(barn.barn.context, 'goat-2')?.weighings.map(({ grams }) => grams)).toEqual([
      15_400, 15_000,
    ]);
  });

  test('that is hard to believe is kept and marked, and is not the last weight', () => {
    const barn = testBarn();
    bringToWeight(barn, 33_000);
    barn.send({ type: 'skip', reason: 'later' });
    expect(animalPage(barn.barn.context, GOAT.id)?.weighings[0]).toMatchObject({
      grams: 33_000,
      doubt: 'pounds-for-kilograms',
    });
    expect(onFarm(barn, GOAT.id)?.lastWeight?.mass.value).toBe(15_000);
    expect(afterRestart(barn).animals).toEqual(herdOf(barn).animals);
  });
});

function bringToWeight(test: TestBarn, weight: number): void {
  test.send({ type: 'take-jug', jugId: 'jug-1' });
  test.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  test.weigh(0, 1000);
  test.send({ type: 'read-tag', tag: GOAT.tag ?? '' });
  test.weigh(weight, 4000);
}

describe('scores', () => {
  test('say whom to treat at once, with reasons, and are kept', () => {
    const barn = testBarn();
    expect(whomView(barn.barn.context)).toMatchObject({ rows: [], left: null, notScored: 2 });
    barn.send({ type: 'score', animalId: GOAT.id, scored: { ...NOTHING, eyelid: 4, body: 2.5 } });
    barn.send({ type: 'score', animalId: 'goat-2', scored: { ...NOTHING, eyelid: 1, body: 3 } });
    const whom = whomView(barn.barn.context);
    expect(whom.rows.map(({ animal, advice }) => [animal, advice])).toEqual([
      [GOAT.id, 'treat'],
      ['goat-2', 'leave'],
    ]);
    expect(whom.rows[0]?.reasons[0]).toMatchObject({ sign: 'eyelid-pale', speaksFor: 'treat' });
    expect(whom.left).toMatchObject({ treat: 1, left: 1, verdict: 'no-advice' });
    barn.send({ type: 'set-egg-mean', eggsPerGram: 100 });
    expect(whomView(barn.barn.context).left).toMatchObject({ advised: 0.5, verdict: 'enough-left' });
    expect(afterRestart(barn).scores).toEqual(herdOf(barn).scores);
  });

  test('count for a week', () => {
    const barn = testBarn();
    barn.send({ type: 'score', animalId: GOAT.id, scored: { ...NOTHING, eyelid: 4 } });
    barn.clock.pass(8 * DAY_MS);
    expect(whomView(barn.barn.context).rows).toEqual([]);
  });

  test('that were a slip are taken back: those before count again, on the screens, after a restart and in what is taken along', () => {
    const barn = testBarn();
    const score = (eyelid: 1 | 4) =>
      barn.send({ type: 'score', animalId: GOAT.id, scored: { ...NOTHING, eyelid } });
    const scoredAt = () => herdView(barn.barn.context).find(({ id }) => id === GOAT.id)?.scoredAt ?? '';
    const takeBack = (at: string) => barn.send({ type: 'take-back-score', animalId: GOAT.id, scoredAt: at });
    const advised = () => whomView(barn.barn.context).rows.map(({ advice, reasons }) => [advice, reasons]);
    score(1);
    const first = scoredAt();
    const before = [advised(), herdOf(barn).scores];
    barn.clock.pass(60_000);
    score(4);
    const slip = scoredAt();
    expect(advised()).not.toEqual(before[0]);
    expect(Date.parse(slip) - Date.parse(first)).toBe(60_000);
    expect(takeBack(slip).ok).toBe(true);
    expect(scoredAt()).toBe(first);
    expect([advised(), herdOf(barn).scores]).toEqual(before);
    expect(afterRestart(barn).scores).toEqual(before[1]);
    const all = { animalId: null, fromMs: 0, toMs: Number.MAX_SAFE_INTEGER };
    expect(barn.store.scores.after(all, 0, 9)).toMatchObject([{ eyelid: 1 }]);
    expect(takeBack(slip)).toMatchObject({ ok: false, code: 'no-such-score' });
    expect(takeBack(first).ok).toBe(true);
    expect(scoredAt()).toBe('');
    expect(animalPage(barn.barn.context, GOAT.id)?.scores).toEqual([]);
  });

  test('of an animal whose records were merged are taken back from the record they stand in', () => {
    const barn = testBarn();
    barn.send({ type: 'score', animalId: 'goat-2', scored: { ...NOTHING, eyelid: 4 } });
    barn.send({ type: 'merge-animals', keptId: GOAT.id, goneId: 'goat-2', choices: { name: 'kept' } });
    const scoredAt = herdView(barn.barn.context).find(({ id }) => id === GOAT.id)?.scoredAt ?? '';
    expect(barn.send({ type: 'take-back-score', animalId: GOAT.id, scoredAt }).ok).toBe(true);
    barn.send({ type: 'part-animals', goneId: 'goat-2' });
    expect(barn.store.scores.newest('goat-2', 9)).toEqual([]);
  });

  test('of another species are refused', () => {
    const barn = testBarn();
    barn.send({ type: 'enrol', name: 'C1', species: 'cattle', class: 'female', tag: null, inMilk: false });
    const id = herdOf(barn).animals.find(({ name }) => name === 'C1')?.id ?? '';
    expect(barn.send({ type: 'score', animalId: id, scored: { ...NOTHING, eyelid: 4 } })).toMatchObject({
      code: 'not-scored-so',
    });
    expect(barn.send({ type: 'score', animalId: id, scored: { ...NOTHING, coat: 'rough' } })).toMatchObject({
      code: 'not-scored-so',
    });
  });

  test.each([
    ['levamisole', 'eyelid-recovering'],
    ['thiamine', 'eyelid-pale'],
  ])('of a pale lid after a dose of %s are read as %s', (medicine, sign) => {
    const barn = testBarn(':memory:', (store) => {
      store.animals.add(newcomer(GOAT), 'Wren');
      store.jugs.add(makeJug());
      const atMs = Date.UTC(2027, 3, 10, 12);
      store.dayBook.addTreatment(given({ id: 't-1', animal: GOAT.id, medicine, atMs }));
    });
    barn.send({ type: 'score', animalId: GOAT.id, scored: { ...NOTHING, eyelid: 4 } });
    const reasons = adviceNow(barn.barn.context).byAnimal.get(GOAT.id)?.reasons ?? [];
    expect(reasons.map((reason) => reason.sign)).toContain(sign);
  });

  test('advice is worked out once until something changes', () => {
    const barn = testBarn();
    const first = adviceNow(barn.barn.context);
    expect(adviceNow(barn.barn.context)).toBe(first);
    barn.send({ type: 'score', animalId: GOAT.id, scored: { ...NOTHING, jaw: 'swollen' } });
    expect(adviceNow(barn.barn.context)).not.toBe(first);
  });
});

test('a note is kept with who and when', () => {
  const barn = testBarn();
  barn.send({ type: 'note-animal', animalId: GOAT.id, note: 'lame' });
  expect(animalPage(barn.barn.context, GOAT.id)?.notes).toMatchObject([{ note: 'lame', by: 'Wren' }]);
});

test('a tag unknown at the platform, enrolled there, names the animal that stands on it', () => {
  const barn = testBarn();
  barn.send({ type: 'take-jug', jugId: 'jug-1' });
  barn.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  barn.weigh(0, 1000);
  barn.weigh(12_000, 3000);
  expect(barn.send({ type: 'read-tag', tag: '998000000000888' })).toMatchObject({ code: 'no-such-tag' });
  const newOne = { name: '31', species: 'goat', class: 'young', inMilk: false } as const;
  expect(barn.send({ type: 'enrol', ...newOne, tag: '998000000000888' }).ok).toBe(true);
  const { phase } = herdOf(barn).round;
  const animal = herdOf(barn).animals.find(({ name }) => name === '31');
  expect('visit' in phase ? phase.visit?.who?.animalId : null).toBe(animal?.id);
});
