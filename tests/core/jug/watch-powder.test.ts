import { expect, test } from 'vitest';
import { type PowderSeen, watchPowder } from '../../../core/jug/watch-powder.ts';
import { grams } from '../../../core/quantity/mass.ts';

const START: PowderSeen = { verdict: 'none', seen: grams(0) };

function watch(rises: readonly number[]): PowderSeen['verdict'] {
  return rises.reduce((before, rise) => watchPowder(before, grams(rise), grams(52), grams(1)), START).verdict;
}

test.each([
  ['nothing yet', [0, 1], 'none'],
  ['the half, then the rest', [26, 52], 'whole'],
  ['a jug lifted', [26, -900], 'jug-lifted'],
  ['a jug lifted and set back as it was', [26, -900, 26], 'part'],
  ['a jug lifted and set back within 3 g', [26, -900, 28], 'part'],
  ['a jug lifted, filled at the table, set back', [0, -900, 52], 'whole'],
  ['a jug set back with something else in it', [0, -900, 24], 'jug-changed'],
  ['a jug set back lighter than it was', [26, -900, 10], 'jug-changed'],
  ['another jug that is then filled up with powder', [0, -900, 24, 52], 'jug-changed'],
  ['too much, whatever comes after', [104, 52], 'too-much'],
])('%s is judged so', (_what, rises, expected) => {
  expect(watch(rises)).toBe(expected);
});
