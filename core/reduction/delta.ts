import type { Interval } from '../statistics/interval.ts';
import { gammaQuantile } from '../statistics/quantiles.ts';
import type { GroupMoments } from './counts.ts';

/**
 * Limits of the reduction from a gamma fitted to the ratio of means by the delta method (Levecke et al.); fractions.
 *
 * The first choice of the 2023 guideline's statisticians. Paired tests take the covariance as it is. `null` where no
 * egg was seen after: the method is then not defined.
 */
export function deltaLimits({ n1, n2, m1, m2, v1, v2, c }: GroupMoments, level: number): Interval | null {
  if (m2 === 0) return null;
  const ratio = m2 / m1;
  const variance = ratio ** 2 * (v1 / m1 ** 2 + v2 / m2 ** 2 - (2 * c) / (m1 * m2));
  const animals = Math.min(n1, n2);
  const shape = (ratio ** 2 * animals) / variance;
  // Pairs that all fell by the same share leave no spread: the ratio is then known.
  if (!(variance > 0 && Number.isFinite(shape))) return { lower: 1 - ratio, upper: 1 - ratio };
  const scale = variance / (ratio * animals);
  const tail = (1 - level) / 2;
  return {
    lower: 1 - gammaQuantile(1 - tail, shape, scale),
    upper: 1 - gammaQuantile(tail, shape, scale),
  };
}
