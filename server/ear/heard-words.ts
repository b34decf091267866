import { showNumber } from '../../core/quantity/show.ts';
import type { SpokenRefusal } from '../../core/speech/interpret.ts';
import type { ScreenLanguage } from '../../shared/language.ts';

/** Why nothing came of what was heard, other than by a wrong volume. */
export type HeardWhy =
  | Exclude<SpokenRefusal['why'], 'wrong-volume'>
  | 'not-understood'
  | 'kiosk-was-speaking'
  | 'no-screen'
  | 'nothing-to-say-again';

const EN: Readonly<Record<HeardWhy, string>> = {
  'nothing-offered': 'There is no dose on offer. Nothing is logged.',
  'no-animal': 'No animal is named yet. Say its tag first.',
  'undo-over': 'The time to take it back is over. Correct it in the day book.',
  'moved-on': 'Something changed while you spoke. Look, and say it again.',
  'not-by-voice': 'A dose is not logged by voice here. Hold the button.',
  'not-understood': 'Not understood. Say it again.',
  'kiosk-was-speaking': 'The kiosk was speaking. Say it again.',
  'no-screen': 'No screen is open on the kiosk. Open its page.',
  'nothing-to-say-again': 'Nothing was said that still holds.',
};

const ES: Readonly<Record<HeardWhy, string>> = {
  'nothing-offered': 'No hay dosis ofrecida. No se anotó nada.',
  'no-animal': 'Aún no se nombró ningún animal. Diga primero su arete.',
  'undo-over': 'Ya pasó el tiempo para retirarla. Corrija en el libro.',
  'moved-on': 'Algo cambió mientras hablaba. Mire y dígalo otra vez.',
  'not-by-voice': 'Aquí la dosis no se anota por voz. Mantenga el botón.',
  'not-understood': 'No se entendió. Dígalo otra vez.',
  'kiosk-was-speaking': 'El quiosco estaba hablando. Dígalo otra vez.',
  'no-screen': 'No hay pantalla abierta en el quiosco. Abra su página.',
  'nothing-to-say-again': 'No se dijo nada que siga siendo cierto.',
};

const WORDS: Readonly<Record<ScreenLanguage, Readonly<Record<HeardWhy, string>>>> = { en: EN, es: ES };

/** Why nothing came of what was heard, as the screen shows it. */
export function heardWords(why: HeardWhy, language: ScreenLanguage): string {
  return WORDS[language][why];
}

/** A refusal as the screen shows it: what was understood, and what to do instead. */
export function refusedWords(refusal: SpokenRefusal, language: ScreenLanguage): string {
  if (refusal.why !== 'wrong-volume') return heardWords(refusal.why, language);
  const [said, shown] = [showNumber(refusal.saidMl, 3), showNumber(refusal.shownMl, 3)];
  return language === 'en'
    ? `I heard ${said}. The dose is ${shown}. Nothing is logged: look at the syringe.`
    : `Oí ${said}. La dosis es ${shown}. No se anotó nada: mire la jeringa.`;
}
