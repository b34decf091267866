import { expect, test } from 'vitest';
import { farFromKnown } from '../../../core/medicine/far-rate.ts';

test.each([
  ['ten times the one rule there is', 120, [12], 12],
  ['a tenth of it', 1.2, [12], 12],
  ['the figure in pounds for the one in kilograms', 5.44, [12], 12],
  ['twice as much, as goats get of a sheep dose', 16, [8], null],
  ['near one of two', 9, [20, 8], null],
  ['far from both', 1, [20, 8], 8],
  ['nothing to hold it against', 1000, [], null],
])('%s', (_what, rate, known, nearest) => {
  expect(farFromKnown(rate, known)).toBe(nearest);
});
