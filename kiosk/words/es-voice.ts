import type { enVoice } from './en-voice.ts';

/** Spanish for setting the voice of the kiosk. */
export const esVoice: typeof enVoice = {
  door: 'Voz',
  muted: 'en silencio',
  speaks: 'Habla',
  speaksNot: 'Callado',
  speaksHint: 'toque para callar',
  mutedHint: 'toque para hablar',
  language: { en: 'English', es: 'Español' },
  languageHint: { en: 'toque: Español', es: 'toque: English' },
  voice: (number) => `Voz ${number}`,
  voiceHint: (of) => `toque: otra de ${of}`,
  rate: (level) => `Paso ${level}`,
  volume: (level) => `Vol. ${level}`,
  tryIt: 'Diga algo',
  sounds: 'Sonidos',
  sound: {
    settle: 'Está encima, espere',
    held: 'Peso fijado',
    stop: 'Deje de echar',
    logged: 'Anotado',
    fault: 'Una falla',
  },
  heard: {
    heard: '',
    locked: 'Aún no se oye: toque la pantalla',
    'no-page': 'No se oye: no hay página del quiosco abierta aquí',
    'no-voice': 'Solo sonidos, sin palabras: instale espeak-ng',
    'no-player': 'No se oye: aplay no puede sonar aquí',
  },
  byBrowser: 'Habla este navegador: espeak-ng no está instalado',
  saying: (text) => `“${text}”`,
};
