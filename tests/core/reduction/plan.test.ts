import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../../core/moment.ts';
import { confoundersOf, type TestDose, type TestStory } from '../../../core/reduction/confounders.ts';
import { type Candidate, retestDays, testSize, whomToSample } from '../../../core/reduction/plan.ts';

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

test('the second samples are due from the tenth day, best on the fourteenth', () => {
  expect(retestDays(0)).toEqual({ fromMs: 10 * DAY_MS, bestMs: 14 * DAY_MS, untilMs: 14 * DAY_MS });
});

describe('what else may have made the result', () => {
  const dose: TestDose = {
    outcome: 'whole',
    share: 1,
    weightFromScale: true,
    scale: 'passed',
    syringeChecked: true,
    givenAtMs: 0,
    sampledAtMs: 14 * DAY_MS,
  };
  const clean: TestStory = { doses: [dose], eggsBefore: 200, untreatedFell: 0.1, generaTold: true };

  test('is nothing in a test without fault', () => {
    expect(confoundersOf(clean)).toEqual([]);
  });

  test.each([
    ['dose-short', { share: 0.9 }],
    ['dose-not-kept', { outcome: 'part' }],
    ['weight-not-from-scale', { weightFromScale: false }],
    ['scale-failed-check', { scale: 'failed' }],
    ['scale-unchecked', { scale: 'unchecked' }],
    ['syringe-unchecked', { syringeChecked: false }],
    ['sampled-early', { sampledAtMs: 6 * DAY_MS }],
    ['sampled-late', { sampledAtMs: 15 * DAY_MS }],
  ] as const)('%s in one dose of many', (confounder, change) => {
    expect(confoundersOf({ ...clean, doses: [dose, { ...dose, ...change }] })).toEqual([confounder]);
  });

  test.each([
    ['few-eggs', { eggsBefore: 89 }],
    ['fell-untreated', { untreatedFell: 0.57 }],
    ['no-untreated-group', { untreatedFell: null }],
    ['genera-not-told', { generaTold: false }],
  ] as const)('%s', (confounder, change) => {
    expect(confoundersOf({ ...clean, ...change })).toEqual([confounder]);
  });
});
