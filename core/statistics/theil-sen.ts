import type { Interval } from './interval.ts';
import { median, medianOfSorted } from './moments.ts';
import { normalQuantile } from './quantiles.ts';

/** A straight line through points, by the median of all slopes between two of them. */
export interface TheilSen {
  readonly slope: number;
  /** The median of the ordinates less the slope times that of the abscissas. */
  readonly intercept: number;
  /** Limits of the slope; `null` for fewer than 3 points. */
  readonly limits: Interval | null;
}

/** Most points fitted: slopes grow with their square. */
export const MOST_POINTS = 1000;

/**
 * Fits a line that a few bad points do not bend (Theil 1950, Sen 1968), with limits from the variance of Kendall's
 * rank statistic, ties allowed for.
 *
 * `null` where no two abscissas differ. Throws `RangeError` for lists of unlike length, for more than `MOST_POINTS`,
 * and for what is not a finite number.
 */
export function theilSen(xs: readonly number[], ys: readonly number[], level = 0.95): TheilSen | null {
  if (xs.length !== ys.length) throw new RangeError(`${xs.length} points cannot have ${ys.length} heights`);
  if (xs.length > MOST_POINTS) throw new RangeError(`at most ${MOST_POINTS} points can be fitted`);
  if (![...xs, ...ys].every(Number.isFinite)) throw new RangeError('a point must have finite coordinates');
  const slopes = slopesOf(xs, ys);
  if (slopes.length === 0) return null;
  const slope = medianOfSorted(slopes);
  return {
    slope,
    intercept: median(ys) - slope * median(xs),
    limits: xs.length < 3 ? null : limitsOf(slopes, xs, ys, level),
  };
}

/** Slopes between all pairs of points that do not stand above one another, in rising order. */
function slopesOf(xs: readonly number[], ys: readonly number[]): Float64Array {
  const [across, up] = [Float64Array.from(xs), Float64Array.from(ys)];
  const slopes = new Float64Array((xs.length * (xs.length - 1)) / 2);
  let found = 0;
  for (let i = 1; i < across.length; i += 1) {
    const [x, y] = [across[i] ?? 0, up[i] ?? 0];
    for (let j = 0; j < i; j += 1) {
      const run = x - (across[j] ?? x);
      if (run !== 0) slopes[found++] = (y - (up[j] ?? 0)) / run;
    }
  }
  return slopes.subarray(0, found).sort();
}

function limitsOf(
  slopes: Float64Array,
  xs: readonly number[],
  ys: readonly number[],
  level: number,
): Interval | null {
  const n = ys.length;
  const term = (count: number): number => count * (count - 1) * (2 * count + 5);
  const ties = [...repeats(xs), ...repeats(ys)].reduce((total, count) => total + term(count), 0);
  const reach = normalQuantile((1 + level) / 2) * Math.sqrt(Math.max(0, (term(n) - ties) / 18));
  const last = slopes.length - 1;
  const lower = slopes[Math.max(Math.round((slopes.length - reach) / 2) - 1, 0)];
  const upper = slopes[Math.min(Math.round((slopes.length + reach) / 2), last)];
  return lower === undefined || upper === undefined ? null : { lower, upper };
}

/** How often each value that occurs more than once occurs. */
function repeats(values: readonly number[]): number[] {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()].filter((count) => count > 1);
}
