import { heardNumber } from './heard-number.ts';
import type { SpokenLanguage } from './language.ts';
import type { NumberForm } from './number-words.ts';
import { digitsIfMisheard, spokenNumber } from './spoken-number.ts';

/** The units that are spoken, by the sign the screen shows. */
export type SpokenUnit = 'mL' | 'kg' | 'lb' | 'g';

/** How a language says a unit: of one, of any other number, and which form of a number stands before it. */
interface UnitWords {
  readonly one: string;
  readonly many: string;
  readonly form: NumberForm;
}

const UNITS: Readonly<Record<SpokenLanguage, Readonly<Record<SpokenUnit, UnitWords>>>> = {
  en: {
    mL: { one: 'millilitre', many: 'millilitres', form: 'alone' },
    kg: { one: 'kilogram', many: 'kilograms', form: 'alone' },
    lb: { one: 'pound', many: 'pounds', form: 'alone' },
    g: { one: 'gram', many: 'grams', form: 'alone' },
  },
  es: {
    mL: { one: 'mililitro', many: 'mililitros', form: 'masculine' },
    kg: { one: 'kilogramo', many: 'kilogramos', form: 'masculine' },
    lb: { one: 'libra', many: 'libras', form: 'feminine' },
    g: { one: 'gramo', many: 'gramos', form: 'masculine' },
  },
};

/** A quantity of the screen taken apart: "3.3 mL". */
function split(shown: string): { readonly number: string; readonly unit: SpokenUnit } {
  const found = /^(\S+) (mL|kg|lb|g)$/.exec(shown);
  if (found === null) throw new RangeError(`"${shown}" is not a quantity that is spoken`);
  return { number: found[1] as string, unit: found[2] as SpokenUnit };
}

/** The number of a quantity of the screen alone, in words: "3.3 mL" is "three point three". */
export function spokenAmount(shown: string, language: SpokenLanguage): string {
  return spokenNumber(split(shown).number, language);
}

/** A quantity in words: "3.3 mL" is "three point three millilitres". Throws a `RangeError` for what is none. */
export function spokenQuantity(shown: string, language: SpokenLanguage): string {
  const { number, unit } = split(shown);
  const { one, many, form } = UNITS[language][unit];
  const said = spokenNumber(number, language, form);
  return `${said} ${spokenNumber(number, language) === spokenNumber('1', language) ? one : many}`;
}

/**
 * A quantity read so that it cannot be taken for another: where its number sounds like another one, the digits
 * follow, as in "fifteen point four kilograms, one five point four".
 */
export function spokenSurely(shown: string, language: SpokenLanguage): string {
  const digits = digitsIfMisheard(split(shown).number, language);
  return [spokenQuantity(shown, language), ...(digits === null ? [] : [digits])].join(', ');
}

/**
 * The quantity that words say, in its unit, or `null` where they say none. Where digits follow, both must agree.
 */
export function heardQuantity(
  text: string,
  language: SpokenLanguage,
): { readonly value: number; readonly unit: SpokenUnit } | null {
  const [said = '', digits] = text.split(', ');
  const tokens = said.split(' ');
  const last = tokens.pop();
  const units = Object.entries(UNITS[language]) as [SpokenUnit, UnitWords][];
  const unit = units.find(([, { one, many }]) => last === one || last === many)?.[0];
  const value = heardNumber(tokens.join(' '), language);
  if (unit === undefined || value === null) return null;
  if (digits !== undefined && heardNumber(digits, language) !== value) return null;
  return { value, unit };
}
