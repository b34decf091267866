/** Marks the beginning and the end of what came from the catalogue. */
export const MARKS = ['⟦', '⟧'] as const;
/** How much longer other languages may be: the usual allowance for short interface words, common practice, no source. */
const LONGER = 0.4;

/** Writes days as the English catalogue does, under another name, as another language has. */
const LOCALE = 'en-IE';

/** A catalogue made of another: every word of it between marks and longer, to show what is not from it or has no room. */
export function pseudoWords<T>(words: T): T {
  return marked(words) as T;
}

function marked(value: unknown): unknown {
  if (typeof value === 'string') return value === '' ? '' : `${MARKS[0]}${stretched(value)}${MARKS[1]}`;
  if (typeof value === 'function') return (...args: unknown[]) => marked(value(...args));
  if (Array.isArray(value)) return value.map(marked);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, key === 'locale' ? LOCALE : marked(inner)]),
  );
}

function stretched(text: string): string {
  return text + '~'.repeat(Math.ceil(LONGER * text.length));
}
