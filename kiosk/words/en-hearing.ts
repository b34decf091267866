import type { EarView } from '../../shared/ear.ts';
import type { Light, Trouble } from '../hearing/light.ts';
import type { LoudnessVerdict } from '../hearing/loudness-verdict.ts';

/** English for the ear of the kiosk. */
export const enHearing = {
  door: 'Listening',
  talk: 'Talk',
  talkNow: 'Speak',
  hold: 'Hold',
  light: {
    starting: 'Ear wakes, wait',
    waiting: 'Hold Talk',
    open: 'Speak now',
    hearing: 'Hearing you',
    'kiosk-speaking': 'Kiosk speaks, wait',
    done: 'Done',
    refused: 'Not done',
    'not-understood': 'Not understood',
    trouble: '',
  } satisfies Record<Light, string>,
  /** What to say to wake it, where no key is held. */
  wake: (phrase: string) => `Say “${phrase}”`,
  said: (words: string) => `“${words}”`,
  recording: 'Records',
  trouble: {
    'engine-failing': 'Ear failed, starts anew',
    'no-microphone': 'No microphone',
    blocked: 'Microphone blocked',
    'page-far': 'Hears on the kiosk only',
    'bad-sound': 'Bad sound',
    busy: 'Microphone in use',
    untouched: 'Touch to listen',
  } satisfies Record<Trouble, string>,
  remedy: {
    'engine-failing': 'The ear stopped and is being started again. Work by touch meanwhile.',
    'no-microphone': 'No microphone is found. Plug one in: it is found by itself.',
    blocked: 'The browser keeps the microphone from this page. Allow it for this address, then press Talk.',
    'page-far': 'Only the kiosk’s own screen, or a microphone on its board, is listened to.',
    'bad-sound': 'What the microphone sends is no sound. Unplug it and plug it in again.',
    busy: 'Another program holds the microphone, or it failed to start. Close it there; it is tried again by itself.',
    untouched: 'The browser holds the sound back until the screen is touched once.',
  } satisfies Record<Trouble, string>,
  noEngine:
    'No ear is installed on this machine. Start the kiosk once with a network, or install pocketsphinx.',

  sheet: {
    title: 'Say now',
    nothing: 'Nothing can be said here.',
    asleep: 'Hold Talk once: the ear wakes, and what may be said stands here.',
    how: {
      press: 'Hold Talk, or the footswitch, while you speak.',
      wake: 'Say the first line, then what you want. Or hold Talk.',
      off: '',
    } satisfies Record<EarView['mode'], string>,
    leftOut: (count: number) => `Cannot be called: ${count}`,
    leftOutTitle: 'Cannot be called by voice',
    why: {
      shared: 'another has the same',
      'not-2-to-4-digits': 'number not of 2 to 4 digits',
      'not-plain-letters': 'name not of plain letters',
      unsayable: 'a word the ear does not know',
    } satisfies Record<EarView['leftOut'][number]['why'], string>,
    last: (words: string, came: string) => `Last: “${words}” – ${came}`,
    lastNotUnderstood: 'Last: not understood',
    came: { done: 'done', refused: 'not done' },
  },

  shed: {
    mode: {
      off: 'Off',
      press: 'While I hold Talk',
      wake: 'Also when called',
    } satisfies Record<EarView['mode'], string>,
    modeHint: {
      off: 'no microphone',
      press: 'or a footswitch',
      wake: 'microphone always on',
    } satisfies Record<EarView['mode'], string>,
    foot: 'Footswitch',
    footNone: 'none learnt',
    footKey: (key: string) => `key ${key}`,
    test: 'Microphone',
    testHint: 'how loud it hears',
    tryIt: 'Try it',
    tryHint: 'say something',
    record: 'Recording',
    recordOff: 'off',
    recordOn: 'on',
  },
  foot: {
    title: 'Press the footswitch',
    waiting: 'Waiting for a key…',
    how: 'Any switch that acts as a keyboard will do. The key is then kept for talking only.',
    nameless: 'That key has no name a kiosk could keep. Use another.',
    learnt: (key: string) => `Learnt: key ${key}`,
    down: 'Down',
    up: 'Up',
    forget: 'Forget it',
    again: 'Learn again',
    check: 'Step on it: the mark moves.',
  },
  test: {
    title: 'Speak as you will in the barn',
    opening: 'Microphone opening…',
    open: 'Microphone open',
    loudness: {
      silent: 'Nothing comes in. Is it muted, or another one?',
      soft: 'Too soft: go nearer.',
      good: 'Good.',
      loud: 'Too loud: turn it down, or step back.',
    } satisfies Record<LoudnessVerdict, string>,
  },
  tryOut: {
    title: 'Hold Talk and say a phrase',
    wakeTitle: (phrase: string) => `Say “${phrase}”, then a phrase`,
    caution: 'It does what it hears; only the screen stays here.',
    nothing: 'Nothing heard yet.',
  },
  record: {
    title: 'Recording, to find out why it mishears',
    what: 'While on, each thing heard is kept as a sound file on this kiosk, the newest ten minutes. Nothing is sent anywhere.',
    on: 'Records: tap to stop',
    off: 'Off: tap to record',
    kept: (megabytes: string) => `${megabytes} MB kept`,
    none: 'nothing kept',
    wipe: 'Hold to wipe',
  },
};
