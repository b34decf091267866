import type { Achieved } from '../mixing/achieved.ts';
import type { Jug } from '../mixing/jug.ts';
import type { MixPlan } from '../mixing/plan.ts';
import type { Mass } from '../quantity/mass.ts';
import type { PowderWatch } from './watch-powder.ts';

/** Water that was poured and came to rest: what the scale showed and how well it is known. */
export interface PouredWater {
  readonly mass: Mass;
  readonly uncertainty: Mass;
}

/** The mixing of one jug, one step at a time. */
export type Mixing =
  | { readonly step: 'idle' }
  | { readonly step: 'water'; readonly packetId: string }
  | { readonly step: 'place'; readonly plan: MixPlan }
  | { readonly step: 'pour'; readonly plan: MixPlan; readonly jugMass: Mass; readonly net: boolean }
  | {
      readonly step: 'powder';
      readonly plan: MixPlan;
      readonly jugMass: Mass;
      readonly net: boolean;
      readonly water: PouredWater;
      readonly achieved: Achieved;
      readonly verdict: PowderWatch;
      /** The rise when the jug last stood there at rest. */
      readonly seen: Mass;
    }
  | {
      readonly step: 'dissolve';
      readonly plan: MixPlan;
      readonly jugMass: Mass;
      readonly net: boolean;
      readonly water: PouredWater;
      readonly achieved: Achieved;
    }
  | { readonly step: 'label'; readonly jug: Jug };

/** The step names, in the order of the work. */
export type MixingStep = Mixing['step'];

/** What happens to a jug being mixed; all but `weighed` and `stored` come from people. */
export type MixingEvent =
  | { readonly type: 'start'; readonly packetId: string }
  | { readonly type: 'water-temperature'; readonly celsius: number }
  | { readonly type: 'jug-placed' }
  | { readonly type: 'poured' }
  | { readonly type: 'dissolved' }
  | { readonly type: 'in-service' }
  | { readonly type: 'cancel' }
  | { readonly type: 'weighed' }
  | { readonly type: 'stored' };

/** Why an intent was refused; nothing changed. */
export type MixingRefusal =
  | 'wrong-state'
  | 'no-such-packet'
  | 'temperature-out-of-range'
  | 'bench-not-ready'
  | 'bench-moving'
  | 'no-jug-on-scale'
  | 'scale-too-coarse'
  | 'too-little-water'
  | 'tared-mid-way';

/** What the shell around the reducer must do. */
export type MixingEffect = { readonly do: 'store-jug'; readonly jug: Jug };

/** What a step of the mixing comes to. */
export interface MixingOutcome {
  readonly mixing: Mixing;
  readonly effects: readonly MixingEffect[];
  readonly refused: MixingRefusal | null;
}
