import { z } from 'zod';
import { SPOKEN_SCREENS } from '../core/speech/command.ts';
import { EAR_MODES } from './ear-modes.ts';

/** What is set of the ear and kept. */
export const EarSettings = z.strictObject({
  mode: z.enum(EAR_MODES),
  /** The `KeyboardEvent.code` of a footswitch; `null` where none was learnt. */
  key: z
    .string()
    .regex(/^[A-Za-z0-9]{1,32}$/)
    .nullable(),
  /** Whether what is heard is also written to the data folder, to find out why the kiosk mishears. */
  recording: z.boolean(),
});
/** What is set of the ear and kept. */
export type EarSettings = z.infer<typeof EarSettings>;

/** The ear of a kiosk where nobody has set it. */
export const USUAL_EAR: EarSettings = { mode: 'press', key: null, recording: false };

/** Kinds of phrases, as a list of what may be said is ordered. */
export const PHRASE_GROUPS = [
  'wake',
  'given',
  'happened',
  'animal',
  'jug',
  'score',
  'skip',
  'next',
  'undo',
  'screen',
  'say-again',
] as const;

/** What the kiosk hears, whether it would take a command now, and what came of the last. */
export const EarView = z.strictObject({
  ...EarSettings.shape,
  listening: z.enum(['off', 'starting', 'waiting', 'hearing', 'kiosk-speaking']),
  /** Whether a command spoken now would be taken. */
  open: z.boolean(),
  /** Whose microphone it is: of the page open on the kiosk's own machine, or the board's own; `null` for none. */
  source: z.enum(['page', 'board']).nullable(),
  /**
   * Why it cannot hear: `no-engine` where none is installed; `engine-failing` while it does not stay up; `no-microphone`
   * where neither page nor board has one; `blocked` by the browser; `page-far` where only a page of another machine offers
   * one; `bad-sound` where what comes is no sound in the format told.
   */
  trouble: z
    .enum(['no-engine', 'engine-failing', 'no-microphone', 'blocked', 'page-far', 'bad-sound'])
    .nullable(),
  /** Examples of what may be said now, in the words to be said. An ellipsis stands for a number or name. */
  phrases: z.array(z.strictObject({ group: z.enum(PHRASE_GROUPS), say: z.string() })),
  /** Numbers and names by which no animal can be called, and why. */
  leftOut: z.array(
    z.strictObject({
      animal: z.string(),
      why: z.enum(['shared', 'not-2-to-4-digits', 'not-plain-letters', 'unsayable']),
    }),
  ),
  /** The last thing that was heard; `number` grows with each. `sentence` says why it was not done, or what to do. */
  heard: z
    .strictObject({
      number: z.int().positive(),
      words: z.string(),
      outcome: z.enum(['done', 'refused', 'not-understood']),
      sentence: z.string().nullable(),
    })
    .nullable(),
  /** How much sound lies in the data folder, in bytes. */
  recordedBytes: z.int().nonnegative(),
});
/** What the kiosk hears. */
export type EarView = z.infer<typeof EarView>;

/** What only the page that listens can do: a screen to go to, or the question what happened to be opened. */
export const PageWish = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('screen'), screen: z.enum(SPOKEN_SCREENS) }),
  z.strictObject({ type: z.literal('undo'), treatmentId: z.string() }),
]);
/** What only the page that listens can do. */
export type PageWish = z.infer<typeof PageWish>;

/** The one page whose microphone is listened to is told what was asked of it aloud. */
export const EAR_MESSAGES = [z.strictObject({ type: z.literal('spoken-wish'), wish: PageWish })] as const;
/** What the page that listens is told. */
export type EarMessage = z.infer<(typeof EAR_MESSAGES)[number]>;

/** The most sound a page sends in one binary frame, in bytes: samples of 16 bits, the low byte first. */
export const MOST_SOUND_BYTES = 8 * 1024;

/**
 * What a page tells of its microphone. `rate` is in samples a second and `channels` lie side by side in each sample's
 * turn; without a rate it is not open, and `why` says so. `talk` is whether the keeper holds the key to talk.
 */
export const MICROPHONE_MESSAGES = [
  z
    .strictObject({
      type: z.literal('microphone'),
      rate: z.int().min(8000).max(192_000).nullable(),
      channels: z.int().min(1).max(8).optional(),
      why: z.enum(['blocked', 'none', 'closed']).optional(),
    })
    .refine(({ rate, channels, why }) => (rate === null ? why !== undefined : channels !== undefined), {
      message: 'give rate and channels, or no rate and why',
    }),
  z.strictObject({ type: z.literal('talk'), on: z.boolean() }),
] as const;
/** What a page tells of its microphone. */
export type MicrophoneMessage = z.infer<(typeof MICROPHONE_MESSAGES)[number]>;
