import type { ScreenLanguage } from '../../shared/language.ts';

const KEY = 'language';

/** The language this page last showed, so that it begins in it before the server has told; English where none is known. */
export function rememberedLanguage(): ScreenLanguage {
  return read() === 'es' ? 'es' : 'en';
}

/** Keeps the language for the next start of the page, where the browser keeps anything. */
export function rememberLanguage(language: ScreenLanguage): void {
  try {
    localStorage.setItem(KEY, language);
  } catch {
    // A browser that keeps nothing begins in English.
  }
}

function read(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}
