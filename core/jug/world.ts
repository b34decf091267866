import type { Syringe } from '../dosing/syringe.ts';
import type { Animal } from '../herd/animal.ts';
import type { Approval } from '../medicine/approval.ts';
import type { Formulary } from '../medicine/formulary.ts';
import type { Jug } from '../mixing/jug.ts';
import type { Vessel } from '../mixing/vessel.ts';
import type { Moment } from '../moment.ts';
import { grams, type Mass } from '../quantity/mass.ts';
import type { StockLot } from '../stock/lot.ts';
import type { Bench } from '../weighing/bench.ts';
import type { Mixing, MixingOutcome, MixingRefusal } from './state.ts';

/** What the mixing may look at while it takes a step. */
export interface MixingWorld {
  readonly formulary: Formulary;
  readonly approvals: readonly Approval[];
  readonly now: Moment;
  readonly clockTrusted: boolean;
  readonly by: string;
  readonly bench: Bench;
  readonly benchReady: boolean;
  readonly animals: readonly Animal[];
  readonly syringes: readonly Syringe[];
  readonly vessels: readonly Vessel[];
  readonly jugs: readonly Jug[];
  /** The lots of the farm's stock. */
  readonly stock: readonly StockLot[];
  /** An id nobody has used, for the jug this step may make or learn. */
  readonly freshId: string;
  /** The number the next jug wears. */
  readonly nextNumber: number;
}

/** The mixing before a medicine is chosen. */
export const IDLE_MIXING: Mixing = { step: 'idle' };

/** A step that goes somewhere, without effects. */
export function go(mixing: Mixing): MixingOutcome {
  return { mixing, effects: [], refused: null };
}

/** A refusal: the mixing stays as it was. */
export function refuse(mixing: Mixing, refused: MixingRefusal): MixingOutcome {
  return { mixing, effects: [], refused };
}

/** The gross weight on the bench at rest, or why there is none. */
export function atRest({ bench, benchReady }: MixingWorld): Mass | MixingRefusal {
  if (!benchReady || bench.live === null) return 'bench-not-ready';
  if (bench.net) return 'scale-tared';
  return bench.steady ?? 'bench-moving';
}

/** The step of the bench scale, 1 g while it is not known. */
export function divisionOf({ bench }: MixingWorld): Mass {
  return bench.division ?? grams(1);
}
