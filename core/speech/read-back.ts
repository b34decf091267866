import { NUMBER_WORDS } from './number-words.ts';

const { digits: DIGITS, whole } = NUMBER_WORDS.en;
const TEENS = Array.from({ length: 10 }, (_, ones) => whole(10 + ones, 'alone'));
const TENS = Array.from({ length: 8 }, (_, i) => whole(20 + 10 * i, 'alone'));

/** The words of the ten digits, zero first. */
export const DIGIT_WORDS: readonly string[] = DIGITS;
/** The words from ten to nineteen. */
export const TEEN_WORDS: readonly string[] = TEENS;
/** The words of the tens from twenty. */
export const TENS_WORDS: readonly string[] = TENS;

/** A run of digits as words, one a digit; throws on anything else. */
export function digitByDigit(digits: string): string[] {
  return [...digits].map((digit) => {
    const word = DIGITS[Number(digit)];
    if (word === undefined || !/\d/.test(digit)) throw new Error(`not a digit: "${digit}"`);
    return word;
  });
}

/** A number of two digits as it is said whole, such as "forty two"; `null` below ten. */
export function pairWords(pair: string): string[] | null {
  return pair.startsWith('0') ? null : whole(Number(pair), 'alone').split(' ');
}

/** A dose is read back between these two words: the last one tells that no digit is still to come. */
export const READ_BACK = { first: 'given', last: 'mils' } as const;

/** A volume as it is read back, such as "given three point three mils"; in mL. */
export function readBackWords(volumeMl: number): string[] {
  return [READ_BACK.first, ...volumeWords(volumeMl), READ_BACK.last];
}

/**
 * The volume of a whole read-back, in mL; `null` where it is none.
 *
 * Digit by digit only, up to two before the point and two after it: a barn does not tell "fifteen" from "fifty".
 * "point five" without its zero and a zero before other digits are refused, as on the screen.
 */
export function readBackVolume(words: readonly string[]): number | null {
  if (words[0] !== READ_BACK.first || words.at(-1) !== READ_BACK.last) return null;
  const digits = words.slice(1, -1).map((word) => (word === 'point' ? '.' : DIGITS.indexOf(word)));
  const written = digits.join('');
  return /^(0|[1-9]\d?)(\.\d{1,2})?$/.test(written) ? Number(written) : null;
}

/** A volume in words, digit by digit, such as "three point three": how the kiosk asks for it. */
export function volumeWords(value: number): string[] {
  const [whole = '0', after] = String(Number(value.toFixed(3))).split('.');
  return after === undefined
    ? digitByDigit(whole)
    : [...digitByDigit(whole), 'point', ...digitByDigit(after)];
}
