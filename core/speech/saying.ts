import type { CautionCode, CautionStrength } from '../dosing/cautions.ts';
import type { PourAdvice } from '../mixing/pour.ts';
import type { SpokenTime } from './spoken-day.ts';

/** What the deck may be told off for: whatever keeps a weight from being held and a keeper can mend. */
export type DeckTrouble = 'fault' | 'net' | 'not-zeroed' | 'leaning' | 'two-animals';
/** What is said while water goes in. */
export type PourCall = Exclude<PourAdvice, 'pour'> | 'jug-lifted' | 'scale-moved' | 'scale-tared';
/** What is said of the powder. */
export type PowderCall = 'whole' | 'part' | 'too-much' | 'jug-lifted' | 'jug-changed';
/** When milk or meat may be used again, as it is said. */
export type SaidClear = SpokenTime | 'unknown' | 'not-for-people' | 'provisional';

/** Refusals worth saying: those a keeper meets with an animal in hand and the screen out of sight. */
export const REFUSED_ALOUD = [
  'offer-ended',
  'not-this-jug',
  'needs-held-press',
  'platform-not-ready',
  'cannot-pass-stop',
  'no-such-tag',
  'tag-refused',
  'jug-out-of-life',
  'jug-weighs-otherwise',
  'jugs-weigh-alike',
  'bench-not-ready',
  'bench-moving',
  'not-written',
] as const;
/** One of {@link REFUSED_ALOUD}. */
export type RefusedAloud = (typeof REFUSED_ALOUD)[number];

/** Why what was asked aloud is not done, other than by a wrong number; `other` stands on the screen. */
export const NOT_DONE = [
  'nothing-offered',
  'no-animal',
  'undo-over',
  'moved-on',
  'not-by-voice',
  'nothing-said',
  'other',
] as const;
/** One of {@link NOT_DONE}. */
export type NotDone = (typeof NOT_DONE)[number];

/** One thing to say, before it is put into the words of a language. Numbers are strings as the screen shows them. */
export type Saying =
  | { readonly what: 'animal'; readonly name: string }
  /** Who was called by voice, with the number it wears: so that a wrong one is noticed. */
  | { readonly what: 'called'; readonly name: string; readonly number: string | null }
  | { readonly what: 'weight'; readonly weight: string }
  | { readonly what: 'who' }
  | { readonly what: 'which-animal' }
  | {
      readonly what: 'dose';
      /** What goes in, such as "3.3 mL". */
      readonly total: string;
      /** The mark of each draw, largest first. */
      readonly marks: readonly string[];
      /** What the syringe holds, such as "6 mL". */
      readonly syringe: string;
    }
  | { readonly what: 'agitate'; readonly how: 'swirl' | 'shake' }
  | { readonly what: 'caution'; readonly code: CautionCode; readonly strength: CautionStrength }
  | { readonly what: 'jug-in-hand'; readonly number: string }
  | { readonly what: 'logged'; readonly name: string; readonly outcome: 'whole' | 'part' | 'spat-out' }
  | { readonly what: 'clear'; readonly of: 'milk' | 'meat'; readonly from: SaidClear }
  | { readonly what: 'undone'; readonly how: 'not-given' | 'wrong-animal' | 'wrong-volume' }
  | { readonly what: 'skipped' }
  | { readonly what: 'unanswered'; readonly name: string }
  | { readonly what: 'deck'; readonly trouble: DeckTrouble }
  | { readonly what: 'pour'; readonly call: PourCall }
  | { readonly what: 'powder'; readonly call: PowderCall }
  | {
      readonly what: 'link';
      readonly role: 'platform' | 'bench' | 'wand';
      readonly now: 'lost' | 'silent' | 'back';
    }
  | { readonly what: 'tag-unknown'; readonly tag: string }
  | { readonly what: 'refused'; readonly why: RefusedAloud }
  /** A spoken read-back that does not match: what was heard, and what the dose is. */
  | { readonly what: 'wrong-number'; readonly heard: string; readonly wanted: string }
  | { readonly what: 'not-done'; readonly why: NotDone }
  | { readonly what: 'not-understood' }
  | { readonly what: 'try-out' };

/** The name of what is said; plain, so that a log or a test can be read. */
export type What = Saying['what'];
