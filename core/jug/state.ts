import type { Achieved } from '../mixing/achieved.ts';
import type { DilutionScore } from '../mixing/dilution-score.ts';
import type { Jug } from '../mixing/jug.ts';
import type { MixMode, MixPlan, PowderAmount } from '../mixing/plan.ts';
import type { Vessel, VesselDoubt } from '../mixing/vessel.ts';
import type { Mass } from '../quantity/mass.ts';
import type { Pieces } from '../stock/pieces.ts';
import type { PourWatch } from './watch-pour.ts';
import type { PowderWatch } from './watch-powder.ts';

/** Water that was poured and came to rest: what the scale showed and how well it is known. */
export interface PouredWater {
  readonly mass: Mass;
  readonly uncertainty: Mass;
}

/** The jug that stands on the bench, and the recipe it is filled by. */
export interface Standing {
  readonly plan: MixPlan;
  readonly vessel: Vessel;
  /** What the scale showed of the empty jug when it was set down. */
  readonly jugMass: Mass;
  /** How far the water may end from its target, either way. */
  readonly band: Mass;
}

/** The mixing of one jug, one step at a time. */
export type Mixing =
  | { readonly step: 'idle' }
  /** The stock holds lots of the packet: which one is in the hand? */
  | { readonly step: 'lot'; readonly packetId: string }
  | {
      readonly step: 'dilution';
      readonly packetId: string;
      readonly lotId: string | null;
      readonly amount: PowderAmount;
      readonly mode: MixMode;
      /** Best for this herd and these syringes first. */
      readonly scores: readonly DilutionScore[];
      /** A volume the keeper entered, and whether it is so far from the packet's that only a held press takes it. */
      readonly own: { readonly score: DilutionScore; readonly far: boolean } | null;
    }
  | {
      readonly step: 'water';
      readonly packetId: string;
      readonly lotId: string | null;
      readonly amount: PowderAmount;
      readonly mode: MixMode;
      readonly perPacketMl: number;
    }
  | { readonly step: 'place'; readonly plan: MixPlan }
  | {
      readonly step: 'new-jug';
      readonly plan: MixPlan;
      readonly jugMass: Mass;
      /** Standard uncertainty of the empty mass (k = 1). */
      readonly uncertainty: Mass;
      readonly doubt: VesselDoubt;
      /** The letter a new jug would wear. */
      readonly letter: string;
    }
  | ({ readonly step: 'pour'; readonly watch: PourWatch } & Standing)
  | ({
      readonly step: 'powder';
      readonly water: PouredWater;
      readonly achieved: Achieved;
      readonly verdict: PowderWatch;
      /** The rise when the jug last stood there at rest. */
      readonly seen: Mass;
    } & Standing)
  | ({
      readonly step: 'dissolve';
      readonly water: PouredWater;
      readonly achieved: Achieved;
      /** The powder as it was taken for in. */
      readonly seen: Mass;
    } & Standing)
  | { readonly step: 'label'; readonly jug: Jug };

/** The step names, in the order of the work. */
export type MixingStep = Mixing['step'];

/** The mixing while it stands at one step. */
export type MixingAt<S extends MixingStep> = Extract<Mixing, { readonly step: S }>;

/** What happens to a jug being mixed; all but `weighed` and `stored` come from people. */
export type MixingEvent =
  | { readonly type: 'start'; readonly packetId: string }
  /** `null` is powder that is not from the stock. */
  | { readonly type: 'lot'; readonly lotId: string | null }
  | { readonly type: 'amount'; readonly amount: PowderAmount }
  | { readonly type: 'mode'; readonly mode: MixMode }
  /** One more volume for each packet is worked out beside those that are listed. */
  | { readonly type: 'look'; readonly perPacketMl: number }
  | { readonly type: 'dilution'; readonly perPacketMl: number; readonly deliberate: boolean }
  | { readonly type: 'water-temperature'; readonly celsius: number }
  | { readonly type: 'jug-placed' }
  /** The keeper's word that the jug on the bench is empty: a new one, or a known one weighed anew. */
  | { readonly type: 'jug-is-empty'; readonly vesselId: string | null; readonly deliberate: boolean }
  | { readonly type: 'poured'; readonly deliberate: boolean }
  /** The part of a packet that was to be weighed in is in. */
  | { readonly type: 'powder-in'; readonly deliberate: boolean }
  | { readonly type: 'dissolved' }
  | { readonly type: 'in-service' }
  | { readonly type: 'cancel' }
  | { readonly type: 'weighed' }
  | { readonly type: 'stored' };

/** Why an intent was refused; nothing changed. */
export type MixingRefusal =
  | 'wrong-state'
  | 'no-such-packet'
  | 'no-such-lot'
  | 'lot-expired'
  | 'no-such-amount'
  | 'stronger-than-known'
  | 'far-from-label'
  | 'too-weak'
  | 'temperature-out-of-range'
  | 'bench-not-ready'
  | 'bench-moving'
  | 'scale-tared'
  | 'no-jug-on-scale'
  | 'holds-mix'
  | 'no-such-vessel'
  | 'needs-held-word'
  | 'scale-too-coarse'
  | 'too-little-water'
  | 'far-too-much-water'
  | 'jug-not-back'
  | 'no-powder-seen'
  | 'powder-far-off';

/** What the shell around the reducer must do. */
export type MixingEffect =
  | { readonly do: 'store-jug'; readonly jug: Jug }
  | { readonly do: 'learn-vessel'; readonly vessel: Vessel }
  /** The powder is in a mix nobody keeps: it is gone from the stock all the same. */
  | { readonly do: 'take-stock'; readonly lotId: string; readonly pieces: Pieces };

/** What a step of the mixing comes to. */
export interface MixingOutcome {
  readonly mixing: Mixing;
  readonly effects: readonly MixingEffect[];
  readonly refused: MixingRefusal | null;
}
