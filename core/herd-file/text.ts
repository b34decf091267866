/** Why a cell of text is refused. */
export type TextFault = 'too-long' | 'control-character' | 'looks-like-formula';

/** A cell as text, or why not. An empty cell, or a lone dash, is `null`. */
export type TextResult =
  | { readonly ok: true; readonly text: string | null }
  | { readonly ok: false; readonly why: TextFault };

/** Most characters of a cell that are looked at: the rest of a huge one is never searched. */
const LONGEST_CELL = 200;
/** What a spreadsheet takes for the beginning of a formula. */
const FORMULA = /^[=+\-@＝＋－＠]/u;
/** Controls, line ends, and marks that turn the direction of the text around. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
const UNPRINTABLE = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;

/**
 * Reads a cell that is kept as text, of at most `longest` characters as people count them.
 *
 * Emoji and any script are kept, composed the one way (NFC). A cell that begins like a formula is refused, unless it
 * stands behind an apostrophe, as our own export writes it: then it is text.
 */
export function textCell(cell: string, longest: number): TextResult {
  if (cell.length > LONGEST_CELL) return { ok: false, why: 'too-long' };
  const trimmed = cell.trim().normalize('NFC');
  if (trimmed === '' || trimmed === '-') return { ok: true, text: null };
  if (UNPRINTABLE.test(trimmed)) return { ok: false, why: 'control-character' };
  const guarded = trimmed.startsWith("'") && FORMULA.test(trimmed.slice(1));
  if (!guarded && FORMULA.test(trimmed)) return { ok: false, why: 'looks-like-formula' };
  const text = guarded ? trimmed.slice(1) : trimmed;
  // A character is one unit or more, so a short text needs no counting.
  const isLong = text.length > longest && characters(text) > longest;
  return isLong ? { ok: false, why: 'too-long' } : { ok: true, text };
}

const SEGMENTER = new Intl.Segmenter('en', { granularity: 'grapheme' });

function characters(text: string): number {
  return [...SEGMENTER.segment(text)].length;
}
