import type { Interval } from '../statistics/interval.ts';
import { tQuantile } from '../statistics/quantiles.ts';
import { type GroupMoments, observedReduction } from './counts.ts';

/**
 * Limits of the reduction from the logarithm of the ratio of means; fractions, and never clamped.
 *
 * Unpaired: WAAVP 1992 (Coles et al.), t with n1 + n2 - 2. Paired: Lyndal-Murphy et al. 2014, "method B", with the
 * covariance taken off and n - 1. `null` where no egg was seen after, since the logarithm is then not defined.
 */
export function logRatioLimits(moments: GroupMoments, level: number): Interval | null {
  const { design, n1, n2, m1, m2, v1, v2, c } = moments;
  if (m2 === 0) return null;
  const shared = design === 'paired' ? (2 * c) / (n1 * m1 * m2) : 0;
  // Perfectly alike pairs leave nothing; rounding may leave less than that.
  const spread = Math.max(0, v1 / (n1 * m1 ** 2) + v2 / (n2 * m2 ** 2) - shared);
  const freedom = design === 'paired' ? n1 - 1 : n1 + n2 - 2;
  const reach = Math.exp(tQuantile((1 + level) / 2, freedom) * Math.sqrt(spread));
  const left = 1 - observedReduction(moments);
  return { lower: 1 - left * reach, upper: 1 - left / reach };
}
