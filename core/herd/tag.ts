/** Why a tag number is refused. */
export type TagRefusal = 'not-15-digits' | 'number-too-large' | 'test-code' | 'no-country';

/** A tag number that passed, or why it did not. */
export type TagResult =
  | { readonly ok: true; readonly tag: string }
  | { readonly ok: false; readonly why: TagRefusal };

/** What a transponder says beside its number; `null` where the reader does not tell. */
export interface TagMarks {
  /** The animal bit. Certified tags are known to carry it wrong, so it is shown and never judged. */
  readonly animal: boolean | null;
  /** How often the animal was tagged anew under the same number, 0 to 7. */
  readonly retag: number | null;
  /** The user information field, 0 to 31. */
  readonly userInfo: number | null;
  /** Whether a block of further data follows the code. */
  readonly extraBlock: boolean | null;
}

/** The largest number 38 bits hold: the national identification code of ISO 11784. */
export const MAX_NATIONAL = 274_877_906_943;

/** The largest number the 14 bits beside the code hold: bits 2 to 15 of ISO 11784. */
export const MAX_RESERVED = 16_383;

/**
 * Checks a 15-digit animal tag number by the rules of ISO 11784.
 *
 * Three digits of country (or manufacturer, 900 to 998) and twelve of national code, which may not pass 2^38 - 1.
 * Prefix 999 is the test code and 000 no country at all: both are refused. The number stays a string.
 */
export function checkTag(digits: string): TagResult {
  if (!/^\d{15}$/.test(digits)) return { ok: false, why: 'not-15-digits' };
  const prefix = digits.slice(0, 3);
  if (prefix === '999') return { ok: false, why: 'test-code' };
  if (prefix === '000') return { ok: false, why: 'no-country' };
  if (Number(digits.slice(3)) > MAX_NATIONAL) return { ok: false, why: 'number-too-large' };
  return { ok: true, tag: digits };
}

/**
 * The two fields in the 14 bits of ISO 11784 that readers print as one number: the retagging counter in the first
 * three, user information in the next five.
 *
 * The number is 0 to 16,383 (included), else `null`. The split is common knowledge of readers, not read in the
 * standard itself, so nothing is decided by it.
 */
export function splitReserved(
  reserved: number,
): { readonly retag: number; readonly userInfo: number } | null {
  if (!Number.isInteger(reserved) || reserved < 0 || reserved > MAX_RESERVED) return null;
  return { retag: reserved >> 11, userInfo: (reserved >> 6) & 0b11111 };
}
