import type { CautionCode, CautionStrength } from '../dosing/cautions.ts';
import type { Clear } from '../dosing/withdrawal.ts';
import type { Step } from '../round/state.ts';
import type { Deck } from '../weighing/deck.ts';
import type { PourCall, PowderCall } from './saying.ts';

/** Where a device stands: `waking` is one that is being opened, of which nothing can be said yet. */
export type SayLink = 'ready' | 'silent' | 'lost' | 'waking' | 'absent';

/** The workflow as the ear needs it: what is in it at one moment. Numbers are strings as the screen shows them. */
export interface SayScene {
  readonly links: Readonly<Record<'platform' | 'bench' | 'wand', SayLink>>;
  readonly deck: Deck['verdict'];
  readonly step: Step;
  /** The number of the jug that is to be proved or is in hand. */
  readonly jug: string | null;
  /** Who stands there, once known. */
  readonly animal: {
    readonly id: string;
    readonly name: string;
    readonly inMilk: boolean;
    /** Whether it was called by voice, and is told with the answer to that. */
    readonly called: boolean;
  } | null;
  /** The weight held in this visit. */
  readonly weight: string | null;
  /** Every caution of the decision or of the offer. */
  readonly cautions: readonly { readonly code: CautionCode; readonly strength: CautionStrength }[];
  /** The asks accepted so far. */
  readonly accepted: readonly CautionCode[];
  readonly offer: {
    readonly id: string;
    readonly total: string;
    readonly marks: readonly string[];
    readonly syringe: string;
    readonly agitate: 'swirl' | 'shake';
  } | null;
  /** The treatment just logged. */
  readonly logged: {
    readonly id: string;
    readonly name: string;
    readonly outcome: 'whole' | 'part' | 'spat-out';
    readonly inMilk: boolean;
    readonly milk: Clear;
    readonly meat: Clear;
    readonly provisional: boolean;
  } | null;
  /** The newest correction in the day book: when it was made, in milliseconds since 1970, and what it says. */
  readonly correction: {
    readonly atMs: number;
    readonly kind: 'not-given' | 'wrong-animal' | 'wrong-volume' | 'vet-time';
  } | null;
  /** Offers that ended without an answer: their number, and the animal of the newest. */
  readonly unanswered: { readonly count: number; readonly name: string | null };
  /** The pour under way, or `null`. */
  readonly pour: PourCall | 'pour' | null;
  /** What was seen of the powder, or `null` while none is awaited. */
  readonly powder: PowderCall | 'none' | null;
  /** A tag that belongs to no animal, with when it was read. */
  readonly unknownTag: { readonly tag: string; readonly at: number } | null;
  /** Milliseconds since 1970. */
  readonly nowMs: number;
  readonly timeZone: string;
}
