import { describe, expect, test } from 'vitest';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';
import { confoundersOf, type TestDose, type TestStory } from '../../../core/reduction/confounders.ts';
import { type Candidate, testSize, whomToSample } from '../../../core/reduction/plan.ts';
import { daysAfter, retestDays, retestWindow } from '../../../core/reduction/retest.ts';

describe('the size of a test', () => {
  test.each([
    ['sheep', 'clinical', 8, 10, 80],
    ['sheep', 'clinical', 14.9, 10, 80],
    ['sheep', 'clinical', 15, 8, 120],
    ['sheep', 'research', 400, 8, 320],
    ['goat', 'clinical', 15, 5, 75],
    ['goat', 'research', 8, 20, 160],
  ] as const)('%s, %s, %d eggs an animal', (host, protocol, each, animals, eggs) => {
    expect(testSize(host, protocol, each)).toEqual({ kind: 'sample', animals, eggs });
  });

  test('cannot be made up for by animals where eggs are too few', () => {
    expect(testSize('goat', 'clinical', 7.9)).toEqual({ kind: 'count-finer', eggsAnAnimal: 8 });
  });
});

test('those weighed with a whole dose are sampled, most eggs first', () => {
  const one = (animalId: string, change: Partial<Candidate>): Candidate => ({
    animalId,
    outcome: 'whole',
    weighed: true,
    lastEggs: null,
    ...change,
  });
  const all = [
    one('none', { lastEggs: 0 }),
    one('unknown', {}),
    one('few', { lastEggs: 3 }),
    one('many', { lastEggs: 40 }),
    one('spat', { lastEggs: 90, outcome: 'spat-out' }),
    one('guessed', { lastEggs: 80, weighed: false }),
  ];
  expect(whomToSample(all, 3)).toEqual(['many', 'few', 'unknown']);
  expect(whomToSample(all, 9)).toEqual(['many', 'few', 'unknown', 'none']);
});

describe('the second samples', () => {
  test.each([
    ['imidazothiazole', 7, 10, 14, 'published'],
    ['benzimidazole', 10, 10, 14, 'published'],
    ['macrocyclic-lactone', 14, 14, 17, 'from-memory'],
    ['other', 10, 14, 14, 'published'],
    [null, 10, 14, 14, 'published'],
  ] as const)('of %s are due from day %d, best on day %d, until day %d', (group, from, best, until, how) => {
    const window = retestWindow(group);
    expect(window).toMatchObject({ fromDay: from, bestDay: best, untilDay: until, evidence: how });
    expect(retestDays(window, 1000)).toEqual({
      fromMs: 1000 + from * DAY_MS,
      bestMs: 1000 + best * DAY_MS,
      untilMs: 1000 + until * DAY_MS,
    });
  });

  test('are dated by the day: noon of the tenth day after a dose at two is the tenth', () => {
    expect(daysAfter(14 * HOUR_MS, 10 * DAY_MS + 12 * HOUR_MS)).toBe(10);
  });
});

describe('what else may have made the result', () => {
  const dose: TestDose = {
    outcome: 'whole',
    share: 1,
    strengthDoubt: 0.005,
    weightFromScale: true,
    byGroup: false,
    scale: 'passed',
    syringeChecked: true,
    otherMedicine: false,
    givenAtMs: 0,
    sampledAtMs: 14 * DAY_MS,
  };
  const window = retestWindow(null);
  const clean: TestStory = { doses: [dose], window, eggsBefore: 200, untreatedFell: 0.1, generaTold: true };

  test('is nothing in a test without fault', () => {
    expect(confoundersOf(clean)).toEqual([]);
  });

  test.each([
    ['dose-short', { share: 0.949 }],
    ['dose-not-kept', { outcome: 'part' }],
    ['strength-doubtful', { strengthDoubt: 0.0251 }],
    ['weight-not-from-scale', { weightFromScale: false }],
    ['weight-by-group', { byGroup: true }],
    ['scale-failed-check', { scale: 'failed' }],
    ['scale-unchecked', { scale: 'unchecked' }],
    ['syringe-unchecked', { syringeChecked: false }],
    ['other-medicine', { otherMedicine: true }],
    ['sampled-early', { sampledAtMs: 9 * DAY_MS }],
    ['sampled-late', { sampledAtMs: 15 * DAY_MS }],
  ] as const)('%s in one dose of many', (confounder, change) => {
    expect(confoundersOf({ ...clean, doses: [dose, { ...dose, ...change }] })).toEqual([
      { confounder, doses: 1 },
    ]);
  });

  test.each([
    ['few-eggs', { eggsBefore: 89 }],
    ['fell-untreated', { untreatedFell: 0.57 }],
    ['no-untreated-group', { untreatedFell: null }],
    ['genera-not-told', { generaTold: false }],
  ] as const)('%s', (confounder, change) => {
    expect(confoundersOf({ ...clean, ...change })).toEqual([{ confounder, doses: 0 }]);
  });
});
