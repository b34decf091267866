/** Why a tag number is refused. */
export type TagRefusal = 'not-15-digits' | 'number-too-large' | 'test-code' | 'no-country';

/** A tag number that passed, or why it did not. */
export type TagResult =
  | { readonly ok: true; readonly tag: string }
  | { readonly ok: false; readonly why: TagRefusal };

/** The largest number 38 bits hold: the national identification code of ISO 11784. */
const MAX_NATIONAL = 274_877_906_943;

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
