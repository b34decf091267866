import type { Words } from '../words/words.ts';
import type { Narrowed } from './book-filter.ts';

/** What the day book is narrowed to, in words: everything, or its points one after the other. */
export function narrowedWords(
  { kind, days, animal, medicine, by }: Narrowed,
  animals: readonly { readonly id: string; readonly name: string }[],
  words: Words,
): string {
  const { dayBook } = words;
  const said = [
    kind === undefined ? '' : dayBook.kinds[kind],
    days === undefined ? '' : dayBook.daysBack(days),
    animal === undefined ? '' : (animals.find(({ id }) => id === animal)?.name ?? dayBook.oneGone),
    medicine ?? '',
    by ?? '',
  ].filter(Boolean);
  return said.length === 0 ? dayBook.everything : said.join(', ');
}
