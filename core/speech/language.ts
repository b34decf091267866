/** The languages the kiosk speaks and hears. */
export const SPOKEN_LANGUAGES = ['en', 'es'] as const;
/** One of {@link SPOKEN_LANGUAGES}. */
export type SpokenLanguage = (typeof SPOKEN_LANGUAGES)[number];
