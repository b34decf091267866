import type { ScreenLanguage } from '../../shared/language.ts';
import { Later } from '../frame/later.ts';
import { en } from './en.ts';
import { keepTogether } from './keep-together.ts';
import type { FirstWords, Words } from './words.ts';

/** The words of a language: those a page begins with, and all of them. */
interface Language {
  readonly first: Later<FirstWords>;
  readonly whole: Later<Words>;
}

/** The words a page begins with: English is on every page, so that there is always something to say. */
export const AT_FIRST: FirstWords = keepTogether(en);

/** The languages of the screen. */
export const LANGUAGES: Readonly<Record<ScreenLanguage, Language>> = {
  en: {
    first: new Later(async () => AT_FIRST),
    whole: new Later(async () => keepTogether((await import('./en-whole.ts')).enWhole)),
  },
  es: {
    first: new Later(async () => keepTogether((await import('./es.ts')).es)),
    whole: new Later(async () => keepTogether((await import('./es-whole.ts')).esWhole)),
  },
};
