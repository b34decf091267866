import type { SpokenLanguage } from './language.ts';
import { NUMBER_WORDS, type NumberForm } from './number-words.ts';

/** The largest whole part that is said as a number; beyond it digits are read. */
const LARGEST = 999_999;

/** A number as it stands on a screen, taken apart. */
interface Shown {
  readonly negative: boolean;
  readonly whole: number;
  /** The digits after the point without ending zeros; empty where none are left. */
  readonly decimals: string;
}

function takeApart(shown: string): Shown {
  const found = /^([-−]?)(\d[\d,]*)(?:\.(\d+))?$/.exec(shown.trim());
  if (found === null) throw new RangeError(`"${shown}" is not a number as a screen shows it`);
  const [, sign = '', whole = '', decimals = ''] = found;
  return {
    negative: sign !== '',
    whole: Number(whole.replaceAll(',', '')),
    decimals: decimals.replace(/0+$/, ''),
  };
}

/**
 * A number as shown on the screen, such as "15.4", in words: "fifteen point four".
 *
 * The digits after the point are read one by one, a number below one begins with "zero", and no ending zero is said,
 * as the read-back habits of aviation and pharmacy have it (common practice, no source). `form` is what follows it.
 * Throws a `RangeError` for what is not a number of the screen or has more than six digits before its point.
 */
export function spokenNumber(shown: string, language: SpokenLanguage, form: NumberForm = 'alone'): string {
  const { negative, whole, decimals } = takeApart(shown);
  if (whole > LARGEST) throw new RangeError(`"${shown}" is too large to be said as a number`);
  const words = NUMBER_WORDS[language];
  const said = words.whole(whole, decimals === '' ? form : 'alone');
  return [
    ...(negative ? [words.minus] : []),
    said,
    ...(decimals === '' ? [] : [words.point, spokenDigits(decimals, language)]),
  ].join(' ');
}

/** Digits one by one, a point among them too: "1.65" is "one point six five". Throws a `RangeError` for other signs. */
export function spokenDigits(text: string, language: SpokenLanguage): string {
  const words = NUMBER_WORDS[language];
  return Array.from(text, (sign) => {
    const said = sign === '.' ? words.point : words.digits[Number(sign)];
    if (said === undefined || sign.trim() === '') throw new RangeError(`"${sign}" is not a digit`);
    return said;
  }).join(' ');
}

/** The digits of a number that is easily taken for another, such as "one five" of fifteen; `null` where it is not. */
export function digitsIfMisheard(shown: string, language: SpokenLanguage): string | null {
  const { whole, decimals } = takeApart(shown);
  if (whole > LARGEST || !NUMBER_WORDS[language].misheard(whole)) return null;
  return spokenDigits(decimals === '' ? String(whole) : `${whole}.${decimals}`, language);
}

/** A tag in groups of three digits, each read by itself: "eight four zero, zero zero three". */
export function spokenTag(digits: string, language: SpokenLanguage): string {
  const groups = digits.match(/\d{1,3}/g) ?? [];
  return groups.map((group) => spokenDigits(group, language)).join(', ');
}
