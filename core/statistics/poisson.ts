import type { Interval } from './interval.ts';
import { gammaQuantile } from './quantiles.ts';

/**
 * The exact two-sided limits for the mean of a Poisson count (Garwood 1936), in its gamma form.
 *
 * `count` is a whole number from 0, `level` a confidence between 0 and 1 such as 0.95; else throws `RangeError`.
 */
export function poissonInterval(count: number, level: number): Interval {
  if (!Number.isSafeInteger(count) || count < 0) {
    throw new RangeError(`a count must be a whole number from 0, not ${count}`);
  }
  const tail = (1 - level) / 2;
  return {
    lower: count === 0 ? 0 : gammaQuantile(tail, count),
    upper: gammaQuantile(1 - tail, count + 1),
  };
}
