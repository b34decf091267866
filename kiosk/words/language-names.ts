import type { ScreenLanguage } from '../../shared/language.ts';

/** Each language by its own name: whoever looks for it may read no other. */
export const LANGUAGE_NAMES: Readonly<Record<ScreenLanguage, string>> = { en: 'English', es: 'Español' };

/** The language a tap turns to. */
export function otherLanguage(language: ScreenLanguage): ScreenLanguage {
  return language === 'en' ? 'es' : 'en';
}
