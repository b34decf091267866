/** The languages the kiosk speaks and hears. */
export const SPOKEN_LANGUAGES = ['en', 'es'] as const;
/** One of {@link SPOKEN_LANGUAGES}. */
export type SpokenLanguage = (typeof SPOKEN_LANGUAGES)[number];

/** Each language by its own name: whoever looks for it may read no other. */
export const LANGUAGE_NAMES: Readonly<Record<SpokenLanguage, string>> = { en: 'English', es: 'Español' };
