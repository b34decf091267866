import { z } from 'zod';
import { SPOKEN_LANGUAGES } from '../core/speech/language.ts';

/** The languages of the screen: those the kiosk also speaks. */
export const ScreenLanguage = z.enum(SPOKEN_LANGUAGES);
/** A language of the screen. */
export type ScreenLanguage = z.infer<typeof ScreenLanguage>;
