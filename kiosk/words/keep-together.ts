/** A number and its unit: a line that ends between them is read wrong. */
const BEFORE_UNIT = /(?<=\d) (?=(?:mg\/mL|mg\/kg|mg|mL|kg|kB|g|lb|oz|L|mm|in|°C|°F|%)(?![\p{L}\d]))/gu;

/** A catalogue in all of whose phrases a number and its unit stand in one line. */
export function keepTogether<T>(words: T): T {
  return kept(words) as T;
}

function kept(value: unknown): unknown {
  if (typeof value === 'string') return value.replace(BEFORE_UNIT, '\u00a0');
  if (typeof value === 'function') return (...args: unknown[]) => kept(value(...args));
  if (Array.isArray(value)) return value.map(kept);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, kept(inner)]));
}
