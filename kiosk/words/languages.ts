import type { ScreenLanguage } from '../../shared/language.ts';
import { Later } from '../frame/later.ts';
import { en } from './en.ts';
import type { FirstWords, Words } from './words.ts';

/** The words of a language: those a page begins with, and all of them. */
interface Language {
  readonly first: Later<FirstWords>;
  readonly whole: Later<Words>;
}

/** The languages of the screen. English is on every page, so that there is always something to say. */
export const LANGUAGES: Readonly<Record<ScreenLanguage, Language>> = {
  en: {
    first: new Later(async () => en),
    whole: new Later(async () => (await import('./en-whole.ts')).enWhole),
  },
  es: {
    first: new Later(async () => (await import('./es.ts')).es),
    whole: new Later(async () => (await import('./es-whole.ts')).esWhole),
  },
};
