/** The bounds of a value. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** The coverage factor of every interval shown: about 95 % (JCGM 100, 6.3.3). */
export const K = 2;
/** A divisor doubted more than this at k = 2 could be next to nothing: the interval is then as wide as at this doubt. */
const MOST_DIVISOR_DOUBT = 0.9;

/**
 * The interval at k = 2 of a quotient, from the relative standard uncertainties of what stands above and below it.
 *
 * Fieller's: the values r with (r / value - 1)^2 <= k^2 (above^2 + (r / value)^2 below^2), never below zero. For small
 * doubts it is value (1 +- k u); unlike that it keeps its coverage when the divisor is doubtful, by reaching further
 * up than down: a weight that may be 20 % too high is a dose rate that may be 25 % too high. A divisor doubted by more
 * than 45 % (k = 1) is taken at 45 %.
 */
export function quotientInterval(value: number, above: number, below: number): Interval {
  const a = (K * above) ** 2;
  const b = Math.min(K * below, MOST_DIVISOR_DOUBT) ** 2;
  const reach = Math.sqrt(a + b - a * b);
  return { low: Math.max(0, (value * (1 - reach)) / (1 - b)), high: (value * (1 + reach)) / (1 - b) };
}

/**
 * The most a divisor may be doubted (relative, k = 1) for the interval to end at `ratio` times the value, above or below
 * it; 0 where what stands above it reaches so far alone. The inverse of {@link quotientInterval}.
 */
export function divisorWithin(ratio: number, above: number): number {
  return Math.sqrt(Math.max(0, ((ratio - 1) / K) ** 2 - above ** 2)) / ratio;
}
