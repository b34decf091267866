import type { Interval } from '../statistics/interval.ts';
import { betaQuantile } from '../statistics/quantiles.ts';

/**
 * Limits of the reduction if each egg before were there or not after (Dobson et al.); prior 1 and 1, fractions.
 *
 * It leaves out that animals differ, so its limits are too narrow for a verdict; the guideline's statisticians give it
 * a tail five times smaller. `null` where more eggs were seen after than before. Throws `RangeError` for no egg before.
 */
export function binomialLimits(eggsBefore: number, eggsAfter: number, level: number): Interval | null {
  if (!(eggsBefore > 0)) throw new RangeError('a reduction needs an egg before');
  if (eggsAfter > eggsBefore) return null;
  const [alpha, beta] = [eggsAfter + 1, eggsBefore - eggsAfter + 1];
  const tail = (1 - level) / 2;
  return { lower: 1 - betaQuantile(1 - tail, alpha, beta), upper: 1 - betaQuantile(tail, alpha, beta) };
}

/**
 * The lower one-sided 95 % limit of the reduction where no egg was seen after, by the same method, as a fraction.
 *
 * None after few before proves little: 30 before leave 0.91.
 */
export function lowerLimitNoneAfter(eggsBefore: number): number {
  return 1 - betaQuantile(0.95, 1, eggsBefore + 1);
}
