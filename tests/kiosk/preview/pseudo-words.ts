/** Marks the beginning and the end of what came from the catalogue. */
export const MARKS = ['⟦', '⟧'] as const;
/** Marks that take no room: "function application" and "invisible times". */
export const UNSEEN_MARKS = ['\u2061', '\u2062'] as const;
/** How much longer other languages may be: the usual allowance for interface words, common practice, no source. */
const LONGER = 0.4;
/** Units are as long in every language. */
const UNITS = /^(?:kg|lb|oz|mg|mL|g|L|kB|mm)$/;

/** Writes days as the English catalogue does, under another name, as another language has. */
const LOCALE = 'en-IE';

type Marks = readonly [string, string];

/**
 * A catalogue made of another: every word of it longer, each phrase between marks, to show what is not from it or has no room.
 *
 * What a phrase is given is not made longer with it: numbers and names have their length, and phrases are longer already.
 */
export function pseudoWords<T>(words: T, marks: Marks = MARKS): T {
  return marked(words, marks) as T;
}

function marked(value: unknown, marks: Marks): unknown {
  if (typeof value === 'string')
    return value === '' ? '' : `${marks[0]}${stretched(value, marks)}${marks[1]}`;
  if (typeof value === 'function') return (...args: unknown[]) => marked(value(...args), marks);
  if (Array.isArray(value)) return value.map((each) => marked(each, marks));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, key === 'locale' ? LOCALE : marked(inner, marks)]),
  );
}

/** Words as long as they would be elsewhere, by their last letter said again; the share of a letter goes to the next word. */
function stretched(text: string, [begin, end]: Marks): string {
  let depth = 0;
  let owed = 0;
  return text.replace(new RegExp(`[${begin}${end}]|\\p{L}+`, 'gu'), (part) => {
    if (part === begin) depth += 1;
    else if (part === end) depth -= 1;
    else if (depth === 0 && !UNITS.test(part)) {
      owed += LONGER * part.length;
      const letters = Math.round(owed);
      owed -= letters;
      return part + (part.at(-1) ?? '').repeat(letters);
    }
    return part;
  });
}
