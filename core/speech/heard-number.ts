import type { SpokenLanguage } from './language.ts';
import { NUMBER_WORDS } from './number-words.ts';

/** Whole numbers of one word, and of the two or three words that Spanish joins with "y". */
const SMALL: Readonly<Record<SpokenLanguage, ReadonlyMap<string, number>>> = {
  en: smallNumbers('en', [...upTo(20), 30, 40, 50, 60, 70, 80, 90]),
  es: smallNumbers('es', [...upTo(30), 40, 50, 60, 70, 80, 90, 100, ...upTo(9).map((n) => n * 100)]),
};

function upTo(last: number): number[] {
  return Array.from({ length: last + 1 }, (_, n) => n);
}

function smallNumbers(language: SpokenLanguage, values: readonly number[]): Map<string, number> {
  const words = new Map<string, number>();
  for (const form of ['alone', 'masculine', 'feminine'] as const) {
    for (const value of values) words.set(NUMBER_WORDS[language].whole(value, form), value);
  }
  if (language === 'es') words.set('ciento', 100);
  return words;
}

/**
 * The number that words say, or `null` where they say none: the way back of `spokenNumber` and of `spokenDigits`.
 *
 * Takes a number ("fifteen point four") or its digits ("one five point four"), and nothing beside them.
 */
export function heardNumber(text: string, language: SpokenLanguage): number | null {
  const { point, minus } = NUMBER_WORDS[language];
  const tokens = text.toLowerCase().split(/\s+/).filter(Boolean);
  const negative = tokens[0] === minus;
  if (negative) tokens.shift();
  const at = tokens.indexOf(point);
  const whole = wholeOf(at < 0 ? tokens : tokens.slice(0, at), language);
  const decimals = at < 0 ? '' : digitsOf(tokens.slice(at + 1), language);
  if (whole === null || decimals === null || (at >= 0 && decimals === '')) return null;
  const value = Number(decimals === '' ? whole : `${whole}.${decimals}`);
  return negative ? -value : value;
}

function digitsOf(tokens: readonly string[], language: SpokenLanguage): string | null {
  const digits = tokens.map((token) => NUMBER_WORDS[language].digits.indexOf(token));
  return digits.includes(-1) ? null : digits.join('');
}

function wholeOf(tokens: readonly string[], language: SpokenLanguage): number | null {
  if (tokens.length === 0) return null;
  const digits = tokens.length > 1 ? digitsOf(tokens, language) : null;
  if (digits !== null) return Number(digits);
  const value = sum(tokens, language);
  // What was heard must be what would be said: "fifty twenty" adds up, but says no number.
  const said = (['alone', 'masculine', 'feminine'] as const).map((form) =>
    value === null ? '' : NUMBER_WORDS[language].whole(value, form),
  );
  return said.includes(tokens.join(' ')) ? value : null;
}

/** Adds up the words of a number up to 999,999; "hundred" and "thousand" multiply what stands before them. */
function sum(tokens: readonly string[], language: SpokenLanguage): number | null {
  let thousands = 0;
  let rest = 0;
  for (const token of tokens) {
    const small = SMALL[language].get(token);
    if (small !== undefined) rest += small;
    else if (token === 'hundred') rest *= 100;
    else if (token === 'thousand' || token === 'mil') {
      thousands = (rest === 0 ? 1 : rest) * 1000;
      rest = 0;
    } else if (!(language === 'es' && token === 'y')) return null;
  }
  const value = thousands + rest;
  return value > 999_999 ? null : value;
}
