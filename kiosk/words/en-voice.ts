import type { Earcon } from '../../core/speech/earcon.ts';
import type { VoiceView } from '../../shared/voice.ts';

/** English for setting the voice of the kiosk. */
export const enVoice = {
  door: 'Voice',
  muted: 'muted',
  speaks: 'Speaks',
  speaksNot: 'Muted',
  speaksHint: 'tap to mute',
  mutedHint: 'tap to speak',
  language: { en: 'English', es: 'Español' } satisfies Record<VoiceView['language'], string>,
  languageHint: { en: 'tap: Español', es: 'tap: English' } satisfies Record<VoiceView['language'], string>,
  voice: (number: number) => `Voice ${number}`,
  voiceHint: (of: number) => `tap: next of ${of}`,
  rate: (level: number) => `Pace ${level}`,
  volume: (level: number) => `Loud ${level}`,
  tryIt: 'Say something',
  sounds: 'Sounds',
  sound: {
    settle: 'It stands, wait',
    held: 'Weight held',
    stop: 'Stop pouring',
    logged: 'Logged',
    fault: 'A fault',
  } satisfies Record<Earcon, string>,
  heard: {
    heard: '',
    locked: 'Not heard yet: touch the screen',
    'no-page': 'Not heard: no kiosk page is open on this board',
    'no-voice': 'Only sounds, no words: install espeak-ng',
    'no-player': 'Not heard: aplay cannot play on the board',
  } satisfies Record<VoiceView['heard'], string>,
  byBrowser: 'This browser speaks: espeak-ng is not installed',
  saying: (text: string) => `“${text}”`,
};
