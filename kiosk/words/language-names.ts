import type { ScreenLanguage } from '../../shared/language.ts';

/** The language a tap turns to. */
export function otherLanguage(language: ScreenLanguage): ScreenLanguage {
  return language === 'en' ? 'es' : 'en';
}
