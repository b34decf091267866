import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../../core/moment.ts';
import { loadMemory } from '../../../server/barn/memory.ts';
import { animalPage, whomView } from '../../../server/view/animal-page.ts';
import { eggCountsView } from '../../../server/view/egg-view.ts';
import type { Intent } from '../../../shared/intent.ts';
import { GARWOOD_95, MCMASTER_FACTORS } from '../../oracles/egg-counts.ts';
import { GOAT, type TestBarn, testBarn } from '../make/test-barn.ts';
import { FIFTY } from '../make/worm-test.ts';

type LogCount = Extract<Intent, { type: 'log-egg-count' }>;

function log(barn: TestBarn, change: Partial<Omit<LogCount, 'type'>> = {}) {
  return barn.send({
    type: 'log-egg-count',
    animalIds: [GOAT.id],
    eggs: 12,
    method: FIFTY,
    takenOn: null,
    why: { for: 'look', purpose: 'herd' },
    ...change,
  });
}
const countsOf = (barn: TestBarn) => eggCountsView(barn.barn.context).counts;
const meanOf = (barn: TestBarn) => eggCountsView(barn.barn.context).mean;

describe('a count', () => {
  test.each(GARWOOD_95)(
    'of %d eggs is told with its printed limits, times the factor',
    (eggs, lower, upper) => {
      const barn = testBarn();
      log(barn, { eggs });
      const [count] = countsOf(barn);
      expect(count).toMatchObject({ eggs, factor: 50, eggsPerGram: eggs * 50 });
      expect((count?.low ?? Number.NaN) / 50).toBeCloseTo(lower, 5);
      expect((count?.high ?? Number.NaN) / 50).toBeCloseTo(upper, 5);
    },
  );

  test.each(MCMASTER_FACTORS)('of %d g in %d mL, %d mL counted, keeps its exact factor', (...row) => {
    const [dungGrams, suspensionMl, countedMl, printed] = row;
    const barn = testBarn();
    log(barn, { eggs: 3, method: { kind: 'slide', dungGrams, suspensionMl, countedMl } });
    const [count] = countsOf(barn);
    expect(count?.factor).toBeCloseTo(suspensionMl / (dungGrams * countedMl), 12);
    expect(Math.round(count?.factor ?? 0)).toBe(printed);
  });

  test('stands on the page of each animal of a mixed sample, and survives a restart', () => {
    const barn = testBarn();
    log(barn, { animalIds: [GOAT.id, 'goat-2'], takenOn: '2027-04-10' });
    for (const id of [GOAT.id, 'goat-2']) {
      expect(animalPage(barn.barn.context, id)?.eggCounts).toMatchObject([
        { eggs: 12, animals: [{ name: 'Teasel' }, { name: 'Campion' }], takenAt: '2027-04-10T12:00:00.000Z' },
      ]);
    }
    const { settings, eggCounts } = barn.barn.context.memory;
    const byId = (entries: typeof eggCounts) =>
      entries.map(({ record, corrections }) => ({
        ...record,
        animalIds: [...record.animalIds].sort(),
        corrections,
      }));
    expect(byId(loadMemory(barn.store, settings).eggCounts)).toEqual(byId(eggCounts));
  });

  test.each([
    ['of nobody', { animalIds: ['nobody'] }, 'no-such-animal'],
    ['of tomorrow', { takenOn: '2027-04-13' }, 'day-in-future'],
    ['of no test', { why: { for: 'test', testId: 'x', stage: 'after' } }, 'no-such-test'],
  ] as const)('%s is refused', (_what, change, code) => {
    const barn = testBarn();
    expect(log(barn, change as Partial<LogCount>)).toMatchObject({ ok: false, code });
    expect(countsOf(barn)).toEqual([]);
  });

  test('sent twice is logged once', () => {
    const barn = testBarn();
    expect(log(barn, { id: 'same' })).toMatchObject({ ok: true, repeated: false });
    expect(log(barn, { id: 'same' })).toMatchObject({ ok: true, repeated: true });
    expect(countsOf(barn)).toHaveLength(1);
  });
});

describe('a correction', () => {
  test('stands beside the count: another number, then taken back', () => {
    const barn = testBarn();
    log(barn);
    const countId = countsOf(barn)[0]?.id ?? '';
    const correct = (what: Extract<Intent, { type: 'correct-egg-count' }>['what']) =>
      barn.send({ type: 'correct-egg-count', countId, what });
    correct({ kind: 'other-number', eggs: 21 });
    expect(countsOf(barn)[0]).toMatchObject({ eggs: 21, eggsPerGram: 1050, takenBack: false });
    correct({ kind: 'taken-back' });
    expect(countsOf(barn)[0]).toMatchObject({ takenBack: true, corrections: [{ eggs: 21 }, { eggs: null }] });
    expect(correct({ kind: 'other-number', eggs: 3 })).toMatchObject({ code: 'already-corrected' });
    expect(animalPage(barn.barn.context, GOAT.id)?.eggCounts).toEqual([]);
    expect(barn.store.eggCounts.entries()[0]?.record.eggs).toBe(12);
  });

  test('of no count is refused', () => {
    const refused = testBarn().send({
      type: 'correct-egg-count',
      countId: 'none',
      what: { kind: 'taken-back' },
    });
    expect(refused).toMatchObject({ code: 'no-such-count' });
  });
});

describe('the mean of the herd', () => {
  test('is that of the newest batch, a mixed sample weighing as many as are in it', () => {
    const barn = testBarn();
    log(barn, { eggs: 40, takenOn: '2027-03-20' });
    log(barn, { eggs: 2 });
    log(barn, { eggs: 5, animalIds: [GOAT.id, 'goat-2'] });
    // (2 * 50 + 2 * 5 * 50) / 3 animals
    expect(meanOf(barn)).toMatchObject({ eggsPerGram: 200, animals: 3 });
  });

  test('leaves out what was not counted to see how the herd stands', () => {
    const barn = testBarn();
    log(barn, { eggs: 40, why: { for: 'look', purpose: 'ill' } });
    log(barn, { eggs: 30, animalIds: ['goat-2'], why: { for: 'look', purpose: 'bought-in' } });
    expect(meanOf(barn)).toBeNull();
  });

  test('of an animal sampled twice takes the later, and ends after thirty days', () => {
    const barn = testBarn();
    log(barn, { eggs: 40, takenOn: '2027-04-10' });
    log(barn, { eggs: 4 });
    expect(meanOf(barn)).toMatchObject({ eggsPerGram: 200, animals: 1 });
    barn.clock.pass(31 * DAY_MS);
    expect(meanOf(barn)).toBeNull();
  });

  test('says which share to leave undosed, unless a person entered another mean', () => {
    const barn = testBarn();
    const none = { body: null, soiling: null, coat: null };
    barn.send({ type: 'score', animalId: GOAT.id, scored: { ...none, eyelid: 5, jaw: 'swollen' } });
    const whom = () => whomView(barn.barn.context);
    expect(whom().left).toMatchObject({ verdict: 'no-advice' });
    log(barn, { eggs: 2 });
    // 100 eggs per gram: leave half (wormboss.com.au, as `shareToLeave` has it).
    expect(whom()).toMatchObject({ eggsPerGram: 100, eggsEntered: false, left: { advised: 0.5 } });
    barn.send({ type: 'set-egg-mean', eggsPerGram: 500 });
    expect(whom()).toMatchObject({
      eggsPerGram: 500,
      eggsEntered: true,
      counted: { eggsPerGram: 100 },
      left: { advised: 0.1 },
    });
    barn.send({ type: 'set-egg-mean', eggsPerGram: null });
    expect(whom()).toMatchObject({ eggsPerGram: 100, left: { advised: 0.5 } });
  });
});
