import type { CautionCode } from '../dosing/cautions.ts';
import type { Decision, DoseWorld } from '../dosing/decide.ts';
import type { TimeZone } from '../dosing/local-time.ts';
import type { Animal } from '../herd/animal.ts';
import type { Jug } from '../mixing/jug.ts';
import type { OnBench } from '../mixing/prove.ts';
import type { Moment } from '../moment.ts';
import type { Volume } from '../quantity/volume.ts';
import type { Held } from '../weighing/settle.ts';
import type { LapseReason, Offer, VisitWeight } from './offer.ts';
import type { Proof } from './proof.ts';
import type { Correction, Outcome, Treatment } from './treatment.ts';

/** Who stands on the platform, and how that is known. */
export interface Identity {
  readonly animalId: string;
  readonly via: 'wand' | 'screen' | 'voice';
  /** Uptime in milliseconds of the read, the tap or the call. */
  readonly at: number;
  /** True where it was named only after it had been weighed and had left. */
  readonly late?: boolean;
  /** Other animals whose tags were read shortly before this one's, with nobody on the deck yet. */
  readonly others?: readonly { readonly animalId: string; readonly at: number }[];
}

/** One animal's time at the platform: identity and weight belong to it and to no other. */
export interface Visit {
  readonly who: Identity | null;
  readonly weight: VisitWeight | null;
  readonly onDeck: boolean;
  /** True where a dose already went by this weight, so that the day book holds it. */
  readonly dosed?: boolean;
}

/** The round, one step at a time; data lives only in the steps where it means something. */
export type Phase =
  | { readonly step: 'no-jug' }
  | {
      readonly step: 'prove-jug';
      readonly jugId: string;
      /** The visit that goes on with this jug once it is proved; `null` where a new one begins. */
      readonly visit: Visit | null;
    }
  | { readonly step: 'visit'; readonly jugId: string; readonly visit: Visit }
  | {
      readonly step: 'which-animal';
      readonly jugId: string;
      readonly visit: Visit;
      readonly between: readonly string[];
    }
  | {
      readonly step: 'cautions';
      readonly jugId: string;
      readonly visit: Visit;
      readonly decision: Decision;
      readonly accepted: readonly CautionCode[];
    }
  | { readonly step: 'offered'; readonly jugId: string; readonly visit: Visit; readonly offer: Offer }
  | { readonly step: 'logging'; readonly jugId: string; readonly visit: Visit; readonly offer: Offer }
  | {
      readonly step: 'logged';
      readonly jugId: string;
      readonly visit: Visit;
      readonly treatment: Treatment;
      /** Uptime in milliseconds until which the screen offers to take it back. */
      readonly undoUntil: number;
    };

/** The step names, in the order of the work. */
export type Step = Phase['step'];

/** The whole round: where it stands, and the offers that ended without an answer. */
export interface Round {
  readonly phase: Phase;
  /** Newest last. Each waits for "was it given?", so that a dose swallowed is never lost. */
  readonly unanswered: readonly Offer[];
  /** How the jug in hand was proved; `null` while none is. */
  readonly proof: Proof | null;
  /** The jug the round goes back to when a visit that took up an extra ends; `null` outside of one. */
  readonly backTo: string | null;
}

/** The round before anything is in hand. */
export const FRESH_ROUND: Round = {
  phase: { step: 'no-jug' },
  unanswered: [],
  proof: null,
  backTo: null,
};

/** A visit of which nothing is known yet. */
export const EMPTY_VISIT: Visit = { who: null, weight: null, onDeck: false };

/** What happens to a round; the first group comes from people, the second from devices, disk and clock. */
export type RoundEvent =
  | { readonly type: 'take-jug'; readonly jugId: string }
  | { readonly type: 'prove-jug'; readonly jugId: string; readonly deliberate: boolean }
  | { readonly type: 'prove-on-bench'; readonly jugId: string }
  | { readonly type: 'put-jug-down' }
  /** The animal just dosed gets more in the same visit: an extra out of another jug, or the rest of a part. */
  | { readonly type: 'follow-up'; readonly jugId: string }
  | { readonly type: 'identified'; readonly animalId: string; readonly via: Identity['via'] }
  /** A tag was read that several animals are recorded with. */
  | { readonly type: 'doubtful-tag'; readonly animalIds: readonly string[] }
  | { readonly type: 'accept'; readonly code: CautionCode }
  | {
      readonly type: 'give';
      readonly offerId: string;
      readonly outcome: Outcome;
      readonly left?: Volume | null;
      /** Whether the volume was read back aloud, instead of a press. */
      readonly readBack?: boolean;
    }
  | { readonly type: 'skip'; readonly reason: SkipReason }
  | { readonly type: 'answer'; readonly offerId: string; readonly given: boolean }
  | { readonly type: 'corrected'; readonly correction: Correction }
  | { readonly type: 'next' }
  | { readonly type: 'stepped-on' }
  | { readonly type: 'held'; readonly held: Held }
  | { readonly type: 'stepped-off' }
  | { readonly type: 'platform-blank' }
  | { readonly type: 'stored'; readonly treatment: Treatment }
  | { readonly type: 'world-changed'; readonly what: 'jugs' | 'syringes' | 'rules' | 'disk' | 'clock' }
  | { readonly type: 'tick' };

/** Why an animal was left undosed. */
export type SkipReason = 'not-needed' | 'sick' | 'refused' | 'later' | 'stopped';

/** What the shell around the reducer must do, in order. */
export type RoundEffect =
  | { readonly do: 'store'; readonly treatment: Treatment }
  | {
      readonly do: 'record-skip';
      readonly animalId: string | null;
      readonly reason: SkipReason;
      readonly weight: VisitWeight | null;
    }
  | { readonly do: 'record-lapse'; readonly offer: Offer; readonly reason: LapseReason }
  | { readonly do: 'record-not-given'; readonly offer: Offer };

/** Why an intent was refused; nothing was given. */
export type RoundRefusal =
  | 'wrong-state'
  | 'no-such-jug'
  | 'not-an-extra'
  | 'more-than-drawn'
  | 'jug-out-of-life'
  | 'not-this-jug'
  | 'needs-held-press'
  | 'bench-not-ready'
  | 'bench-moving'
  | 'scale-tared'
  | 'no-jug-on-scale'
  | 'jug-weight-unknown'
  | 'jug-weighs-otherwise'
  | 'jugs-weigh-alike'
  | 'no-such-animal'
  | 'no-such-caution'
  | 'cannot-pass-stop'
  | 'offer-ended'
  | 'platform-not-ready';

/** What a step of the round comes to. */
export interface RoundStep {
  readonly round: Round;
  readonly effects: readonly RoundEffect[];
  readonly refused: RoundRefusal | null;
}

/** What the round may look at while it takes a step. */
export interface RoundWorld extends DoseWorld {
  readonly now: Moment;
  /** The farm's own, in which days are counted. */
  readonly timeZone: TimeZone;
  readonly animals: readonly Animal[];
  readonly jugs: readonly Jug[];
  /** Whether the platform's link is ready and its deck not blank. */
  readonly platformReady: boolean;
  /** What stands on the platform now, with its weight where one is held; `null` while nobody does. */
  readonly standing: { readonly weight: VisitWeight | null } | null;
  /** What stands on the bench at rest, gross, or why that is not known. */
  readonly onBench: OnBench | 'bench-not-ready' | 'bench-moving' | 'scale-tared';
  /** Who is working. */
  readonly by: string;
  /** An id nobody has used, for whatever this step makes. */
  readonly freshId: string;
}
