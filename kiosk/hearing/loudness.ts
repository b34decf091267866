/** The softest that is told apart, in dB under full scale. */
export const SOFTEST_DB = -80;

/** The root mean square of 16-bit samples in dB under full scale: {@link SOFTEST_DB} (included) to 0 (included). */
export function loudness(samples: Int16Array): number {
  let sum = 0;
  for (const sample of samples) sum += (sample / 32_768) ** 2;
  if (samples.length === 0 || sum === 0) return SOFTEST_DB;
  return Math.min(0, Math.max(SOFTEST_DB, 10 * Math.log10(sum / samples.length)));
}
