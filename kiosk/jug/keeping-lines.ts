import type { JugView } from '../../shared/jug.ts';
import type { FirstWords } from '../words/words.ts';

/** How a jug or bottle is kept, a line each, the refrigerator first. */
export function keepingLines(
  { storage, refrigerate }: Pick<JugView, 'storage' | 'refrigerate'>,
  words: FirstWords,
): string[] {
  const kept = storage.map(({ keep, text }) =>
    keep === 'other' ? words.shipped(text) : words.care.keep[keep],
  );
  return [...(refrigerate ? [words.care.refrigerate] : []), ...kept];
}
