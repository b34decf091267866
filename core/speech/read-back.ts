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

/**
 * Reads a volume said in words: digits, a teen or tens before the point, one to three digits after it.
 *
 * `null` where it is none: "point five" without its zero and a zero before other digits are refused, as on the screen.
 */
export function readVolume(words: readonly string[]): number | null {
  const point = words.indexOf('point');
  const whole = readWhole(point < 0 ? words : words.slice(0, point));
  if (whole === null) return null;
  if (point < 0) return whole;
  const after = words.slice(point + 1).map((word) => DIGITS.indexOf(word));
  if (after.length === 0 || after.length > 3 || after.includes(-1)) return null;
  return Number(`${whole}.${after.join('')}`);
}

function readWhole(words: readonly string[]): number | null {
  const [first = '', second, ...more] = words;
  const tens = TENS.indexOf(first);
  if (tens >= 0) {
    const ones = second === undefined ? 0 : DIGITS.indexOf(second);
    const fits = more.length === 0 && (second === undefined || ones >= 1);
    return fits ? 10 * (tens + 2) + ones : null;
  }
  const teen = TEENS.indexOf(first);
  if (teen >= 0) return second === undefined ? 10 + teen : null;
  const digits = words.map((word) => DIGITS.indexOf(word));
  if (digits.length === 0 || digits.length > 3 || digits.includes(-1)) return null;
  return digits[0] === 0 && digits.length > 1 ? null : Number(digits.join(''));
}

/** A volume in words, digit by digit, such as "three point three": how the kiosk asks for it. */
export function volumeWords(value: number): string[] {
  const [whole = '0', after] = String(Number(value.toFixed(3))).split('.');
  return after === undefined
    ? digitByDigit(whole)
    : [...digitByDigit(whole), 'point', ...digitByDigit(after)];
}
