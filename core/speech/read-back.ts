const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;
const TEENS = [
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
] as const;
const TENS = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'] as const;

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
  const [tens, ones] = [Number(pair[0]), Number(pair[1])];
  if (tens === 0) return null;
  if (tens === 1) return [TEENS[ones] as string];
  const word = TENS[tens - 2] as string;
  return ones === 0 ? [word] : [word, DIGITS[ones] as string];
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
  const after = words.slice(point + 1).map((word) => DIGITS.indexOf(word as (typeof DIGITS)[number]));
  if (after.length === 0 || after.length > 3 || after.includes(-1)) return null;
  return Number(`${whole}.${after.join('')}`);
}

function readWhole(words: readonly string[]): number | null {
  const [first = '', second, ...more] = words;
  const tens = TENS.indexOf(first as (typeof TENS)[number]);
  if (tens >= 0) {
    const ones = second === undefined ? 0 : DIGITS.indexOf(second as (typeof DIGITS)[number]);
    const fits = more.length === 0 && (second === undefined || ones >= 1);
    return fits ? 10 * (tens + 2) + ones : null;
  }
  const teen = TEENS.indexOf(first as (typeof TEENS)[number]);
  if (teen >= 0) return second === undefined ? 10 + teen : null;
  const digits = words.map((word) => DIGITS.indexOf(word as (typeof DIGITS)[number]));
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
