import { z } from 'zod';
import { EARCONS } from '../core/speech/earcon.ts';
import { SPOKEN_LANGUAGES } from '../core/speech/language.ts';
import { VOICE_RATES, VOICE_VOLUMES } from './voice-limits.ts';

const rate = z.int().min(VOICE_RATES.least).max(VOICE_RATES.most);
const volume = z.int().min(VOICE_VOLUMES.least).max(VOICE_VOLUMES.most);

/** What is set of the voice and kept. */
export const VoiceSettings = z.strictObject({
  language: z.enum(SPOKEN_LANGUAGES),
  /** Id of the voice; one that does not speak the language gives way to the usual one of it. */
  voice: z.string().min(1).max(32),
  /** Words a minute. */
  rate,
  /** Hundredths of the loudest. */
  volume,
  muted: z.boolean(),
});
/** What is set of the voice and kept. */
export type VoiceSettings = z.infer<typeof VoiceSettings>;

/** What the kiosk says aloud, and whether it can be heard. */
export const VoiceView = z.strictObject({
  ...VoiceSettings.shape,
  voices: z.array(z.strictObject({ id: z.string(), language: z.enum(SPOKEN_LANGUAGES) })),
  /** Who makes the sound of a word: the kiosk's engine, or, where that is missing, the browser that shows the page. */
  engine: z.enum(['kiosk', 'browser']),
  /**
   * Whether it is heard: `heard`, on the page of the kiosk or on the board's own loudspeaker; `locked` until that page
   * is touched; `no-page` while none is open; `no-voice` where neither the kiosk nor the page can speak; `no-player`
   * where the board's own loudspeaker cannot be played.
   */
  heard: z.enum(['heard', 'locked', 'no-page', 'no-voice', 'no-player']),
  /** What is being said: `until` is the time by which it is over, RFC 3339. */
  speaking: z.strictObject({ id: z.int(), what: z.string(), text: z.string(), until: z.string() }).nullable(),
});
/** What the kiosk says aloud, and whether it can be heard. */
export type VoiceView = z.infer<typeof VoiceView>;

/** What the one page that speaks is told: only a page that said it can is sent these. */
export const VOICE_MESSAGES = [
  /** Say this now, and nothing else. `wav` is where its sound is; `null` where the browser is to speak it. */
  z.strictObject({
    type: z.literal('say'),
    id: z.int(),
    wav: z.string().nullable(),
    text: z.string(),
    language: z.enum(SPOKEN_LANGUAGES),
    rate,
    volume,
  }),
  /** Stop saying it. */
  z.strictObject({ type: z.literal('hush') }),
  z.strictObject({ type: z.literal('earcon'), earcon: z.enum(EARCONS), volume }),
] as const;
/** What the one page that speaks is told. */
export type VoiceMessage = z.infer<(typeof VOICE_MESSAGES)[number]>;

/** What a page tells of its loudspeaker. */
export const LOUDSPEAKER_MESSAGES = [
  /** `can` is whether it may sound: browsers allow it once the page was touched. `words`: whether it can speak itself. */
  z.strictObject({ type: z.literal('loudspeaker'), can: z.boolean(), words: z.boolean() }),
  z.strictObject({ type: z.literal('said'), id: z.int(), how: z.enum(['ended', 'failed']) }),
] as const;
/** What a page tells of its loudspeaker. */
export type LoudspeakerMessage = z.infer<(typeof LOUDSPEAKER_MESSAGES)[number]>;
