import { expect, test } from 'vitest';
import { FRESH_TRIAL, feedTrial, restOf, type Trial } from '../../../core/proving/trial.ts';
import { grams } from '../../../core/quantity/mass.ts';
import type { Reading } from '../../../core/weighing/reading.ts';

function feed(trial: Trial, values: readonly number[], extra: Partial<Reading> = {}, from = 0): Trial {
  return values.reduce(
    (now, value, at) =>
      feedTrial(now, {
        role: 'platform',
        mass: grams(value),
        division: grams(50),
        stability: 'stable',
        net: false,
        zero: false,
        at: from + at * 100,
        ...extra,
      }),
    trial,
  );
}

const same = (value: number, count = 20): number[] => Array.from({ length: count }, () => value);

test('a number that stands for a second and a half is still', () => {
  expect(restOf(feed(FRESH_TRIAL, same(20_000)))).toEqual({ still: true, neverStill: false });
  expect(restOf(feed(FRESH_TRIAL, same(20_000, 12))).still).toBe(false);
});

test('one that wanders by more than a step is not', () => {
  expect(restOf(feed(FRESH_TRIAL, [...same(2000, 10), ...same(2200, 10)])).still).toBe(false);
});

test('one that flickers by a step wider than its decimals still stands', () => {
  const flicker = same(20_000).map((value, at) => value + (at % 2) * 50);
  expect(restOf(feed(FRESH_TRIAL, flicker, { division: grams(10) })).still).toBe(true);
});

test('a number that stands while the scale always says that it moves has its motion mark read wrongly', () => {
  expect(restOf(feed(FRESH_TRIAL, same(20_000), { stability: 'moving' }))).toEqual({
    still: true,
    neverStill: true,
  });
});

test('a fault blanks the number and starts over', () => {
  const trial = feed(feed(FRESH_TRIAL, same(20_000)), [0], { fault: 'over', at: 2000 });
  expect(trial).toMatchObject({ live: null, fault: true, samples: [] });
});

test('a switch to net starts over', () => {
  const trial = feed(feed(FRESH_TRIAL, same(20_000)), [0], { net: true, at: 2000 });
  expect(trial).toMatchObject({ net: true, live: grams(0) });
  expect(trial.samples).toHaveLength(1);
});
