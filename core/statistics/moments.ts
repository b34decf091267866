/** The arithmetic mean. Throws `RangeError` for an empty list. */
export function mean(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('the mean of nothing is not known');
  return sum(values) / values.length;
}

/** The sum; 0 for an empty list. */
export function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** The sample variance, divided by n - 1. Throws `RangeError` for fewer than two values. */
export function variance(values: readonly number[]): number {
  return covariance(values, values);
}

/**
 * The sample covariance, divided by n - 1.
 *
 * Throws `RangeError` for fewer than two pairs or lists of different length.
 */
export function covariance(xs: readonly number[], ys: readonly number[]): number {
  if (xs.length !== ys.length) throw new RangeError(`${xs.length} values cannot pair with ${ys.length}`);
  if (xs.length < 2) throw new RangeError('a spread needs at least two values');
  const [meanX, meanY] = [mean(xs), mean(ys)];
  return sum(xs.map((x, i) => (x - meanX) * ((ys[i] ?? meanY) - meanY))) / (xs.length - 1);
}

/** Pearson's correlation; `null` where one list does not vary. Throws as `covariance`. */
export function correlation(xs: readonly number[], ys: readonly number[]): number | null {
  const spread = Math.sqrt(variance(xs) * variance(ys));
  return spread > 0 ? covariance(xs, ys) / spread : null;
}

/** The middle value, or the mean of the middle two. Throws `RangeError` for an empty list. */
export function median(values: readonly number[]): number {
  return medianOfSorted(Float64Array.from(values).sort());
}

/** The median of values already in rising order. Throws `RangeError` for an empty list. */
export function medianOfSorted(sorted: ArrayLike<number>): number {
  const half = sorted.length >> 1;
  const upper = sorted[half];
  if (upper === undefined) throw new RangeError('the median of nothing is not known');
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? upper) + upper) / 2;
}
