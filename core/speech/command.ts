import type { SkipReason } from '../round/state.ts';

/** The screens that can be gone to by voice. */
export const SPOKEN_SCREENS = ['home', 'platform', 'jug', 'day-book', 'board', 'animals', 'shed'] as const;
/** A screen that can be gone to by voice. */
export type SpokenScreen = (typeof SPOKEN_SCREENS)[number];

/** One sign and the step it is scored at, as in {@link Scores}. */
export type SpokenScore =
  | { readonly sign: 'eyelid' | 'body' | 'soiling'; readonly step: number }
  | { readonly sign: 'jaw'; readonly step: 'none' | 'swollen' }
  | { readonly sign: 'coat'; readonly step: 'smooth' | 'rough' };

/** What was said, before it is held against the state. */
export type Command =
  | { readonly kind: 'screen'; readonly screen: SpokenScreen }
  | { readonly kind: 'say-again' }
  | { readonly kind: 'animal'; readonly animalId: string }
  | { readonly kind: 'take-jug'; readonly jugId: string }
  /** The jug asked about stands on the bench, to be known by its weight. */
  | { readonly kind: 'jug-on-bench' }
  | { readonly kind: 'score'; readonly score: SpokenScore }
  | { readonly kind: 'skip'; readonly reason: SkipReason }
  | { readonly kind: 'next' }
  | { readonly kind: 'undo' }
  /** The answer to what happened: the dose was never given. */
  | { readonly kind: 'not-given' }
  /** The wake phrase, alone or with what was asked in the same breath. */
  | { readonly kind: 'wake'; readonly also: Command | null }
  | { readonly kind: 'given'; readonly volumeMl: number };

/** Words said in this order, and what they stand for. "zero" stands for "oh" too. */
export interface Phrase {
  readonly words: readonly string[];
  readonly command: Command;
}

/** Why a sound came to nothing: no phrase, a likely mishearing, out of the band of lengths, or the kiosk's own voice. */
export type RejectedWhy = 'no-phrase' | 'unsure' | 'too-short' | 'too-long' | 'kiosk-speaking';

/** How well a sound fits its command against what else it may have been: per frame of 10 ms, larger is better. */
export interface Fit {
  /** All words together against bare phones in any order. */
  readonly overPhones: number;
  /** The word that fits worst against bare phones over the same frames. */
  readonly worstWord: number;
  /** The whole sound, with what the command leaves unexplained, against bare phones. */
  readonly whole: number;
  /** All words together against everyday words in any order. */
  readonly overRivals: number;
  /** A read-back, whole and not per frame, against the best of all others; `null` where it was not heard again. */
  readonly overOthers: number | null;
}

/** What the ear made of one stretch of speech: `words` are what it took it for, and `fit` is `null` where it is none. */
export type Heard =
  | {
      readonly kind: 'command';
      readonly command: Command;
      readonly words: readonly string[];
      readonly fit: Fit;
    }
  | {
      readonly kind: 'rejected';
      readonly why: RejectedWhy;
      readonly words: readonly string[];
      readonly fit: Fit | null;
    };
