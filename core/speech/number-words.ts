import type { SpokenLanguage } from './language.ts';

/** What a number stands before: Spanish shortens one before a noun, and has two genders. */
export type NumberForm = 'alone' | 'masculine' | 'feminine';

/** How a language says numbers from 0 to 999,999. */
export interface NumberWords {
  /** The ten digits. */
  readonly digits: readonly string[];
  readonly point: string;
  readonly minus: string;
  /** A whole number from 0 to 999,999. */
  whole(value: number, form: NumberForm): string;
  /**
   * Whether a whole number is easily taken for another one when shouted across a barn, so that its digits are read
   * after it.
   */
  misheard(value: number): boolean;
}

const EN_DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const EN_TEENS = 'ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ');
const EN_TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

function english(value: number): string {
  if (value < 10) return EN_DIGITS[value] as string;
  if (value < 20) return EN_TEENS[value - 10] as string;
  if (value < 100) return joined(EN_TENS[Math.floor(value / 10)] as string, value % 10, english);
  // No "and": across a barn it sounds like a second number to come.
  if (value < 1000) return joined(`${english(Math.floor(value / 100))} hundred`, value % 100, english);
  return joined(`${english(Math.floor(value / 1000))} thousand`, value % 1000, english);
}

const ES_DIGITS = ['cero', 'uno', 'dos', 'tres', 'cuatro', 'cinco', 'seis', 'siete', 'ocho', 'nueve'];
const ES_TO_29 = [
  ...ES_DIGITS,
  ...'diez once doce trece catorce quince dieciséis diecisiete dieciocho diecinueve'.split(' '),
  ...'veinte veintiuno veintidós veintitrés veinticuatro veinticinco veintiséis veintisiete'.split(' '),
  ...'veintiocho veintinueve'.split(' '),
];
const ES_TENS = ['', '', '', 'treinta', 'cuarenta', 'cincuenta', 'sesenta', 'setenta', 'ochenta', 'noventa'];
const ES_HUNDREDS = [
  ...['', 'ciento', 'doscientos', 'trescientos', 'cuatrocientos', 'quinientos', 'seiscientos'],
  ...['setecientos', 'ochocientos', 'novecientos'],
];

function spanish(value: number, form: NumberForm): string {
  if (value < 30) return one(ES_TO_29[value] as string, form);
  if (value < 100) {
    const tens = ES_TENS[Math.floor(value / 10)] as string;
    return joined(tens, value % 10, (rest) => `y ${spanish(rest, form)}`);
  }
  if (value === 100) return 'cien';
  if (value < 1000) {
    const hundreds = ES_HUNDREDS[Math.floor(value / 100)] as string;
    const agreed = form === 'feminine' ? hundreds.replace(/os$/, 'as') : hundreds;
    return joined(agreed, value % 100, (rest) => spanish(rest, form));
  }
  const thousands = Math.floor(value / 1000);
  const mil = thousands === 1 ? 'mil' : `${spanish(thousands, form === 'feminine' ? form : 'masculine')} mil`;
  return joined(mil, value % 1000, (rest) => spanish(rest, form));
}

/** "uno" before a noun: un, una; "veintiuno": veintiún, veintiuna. */
function one(word: string, form: NumberForm): string {
  if (form === 'alone' || !word.endsWith('uno')) return word;
  if (form === 'feminine') return `${word.slice(0, -3)}una`;
  return word === 'uno' ? 'un' : `${word.slice(0, -3)}ún`;
}

function joined(head: string, rest: number, say: (rest: number) => string): string {
  return rest === 0 ? head : `${head} ${say(rest)}`;
}

/** English and Spanish numbers. The point is "punto" in Spanish too: it is a point that stands on the screen. */
export const NUMBER_WORDS: Readonly<Record<SpokenLanguage, NumberWords>> = {
  en: {
    digits: EN_DIGITS,
    point: 'point',
    minus: 'minus',
    whole: english,
    // Thirteen and thirty, fifteen and fifty: every -teen and the -ty it sounds like.
    misheard: (value) => {
      const tail = value % 100;
      return (tail >= 13 && tail <= 19) || (tail >= 30 && tail % 10 === 0);
    },
  },
  es: {
    digits: ES_DIGITS,
    point: 'punto',
    minus: 'menos',
    whole: spanish,
    // Dos and doce, tres and trece, sesenta and setenta.
    misheard: (value) => {
      const tail = value % 100;
      return tail === 12 || tail === 13 || (tail >= 60 && tail <= 79);
    },
  },
};
