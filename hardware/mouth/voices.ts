import type { SpokenLanguage } from '../../core/speech/language.ts';

/** A voice to choose from. */
export interface Voice {
  readonly id: string;
  readonly language: SpokenLanguage;
  /** What the engine calls it. */
  readonly engine: string;
}

/** The voices of espeak-ng that were listened to for each language; the first of a language is its usual one. */
export const VOICES: readonly Voice[] = [
  { id: 'en-us', language: 'en', engine: 'en-us' },
  { id: 'en-gb', language: 'en', engine: 'en-gb' },
  { id: 'en-high', language: 'en', engine: 'en-us+f3' },
  { id: 'es-americas', language: 'es', engine: 'es-419' },
  { id: 'es-spain', language: 'es', engine: 'es' },
  { id: 'es-high', language: 'es', engine: 'es-419+f3' },
];

/** The voice of an id if it speaks the language, else the usual one of the language. */
export function voiceFor(id: string, language: SpokenLanguage): Voice {
  const spoken = VOICES.filter((voice) => voice.language === language);
  return (spoken.find((voice) => voice.id === id) ?? spoken[0]) as Voice;
}

/** What the engine calls the voice of an id; throws a `RangeError` where there is no such voice. */
export function voiceNamed(id: string): string {
  const voice = VOICES.find((each) => each.id === id);
  if (voice === undefined) throw new RangeError(`there is no voice "${id}"`);
  return voice.engine;
}
