import { everySetting, type Method } from './method.ts';

/**
 * The mean of the last N readings where they vary least, once their standard deviation is under a limit.
 *
 * The limit is half a division or a share of the weight, whichever is more.
 */
function lowestVariance(count: number): Method {
  return {
    name: `lowest variance, N = ${count}`,
    settings: everySetting([0.0001, 0.00025, 0.0005, 0.001, 0.0015, 0.0025, 0.004, 0.006, 0.01, 0.015]),
    watch([share = 0], division) {
      const recent: number[] = [];
      let sum = 0;
      let squares = 0;
      let origin: number | null = null;
      return ({ grams }) => {
        // Squares are taken from near the values, or their difference would drown in rounding.
        origin ??= grams;
        const value = grams - origin;
        recent.push(value);
        sum += value;
        squares += value * value;
        if (recent.length > count) {
          const gone = recent.shift() ?? 0;
          sum -= gone;
          squares -= gone * gone;
        }
        if (recent.length < count) return null;
        const mean = sum / count;
        const deviation = Math.sqrt(Math.max(0, squares - count * mean * mean) / (count - 1));
        return deviation <= Math.max(division / 2, share * (origin + mean)) ? origin + mean : null;
      };
    },
  };
}

/** A window of 10 readings, as a scale's firmware takes it. */
export const LOWEST_VARIANCE_10 = lowestVariance(10);
/** A window of 100 readings, as a controller takes it. */
export const LOWEST_VARIANCE_100 = lowestVariance(100);
