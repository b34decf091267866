import type { RegimenInForce } from '../medicine/in-force.ts';
import type { Jug } from '../mixing/jug.ts';
import type { Mass } from '../quantity/mass.ts';
import { scaleUncertainty } from '../weighing/reading.ts';
import { USUAL_NEED } from '../weighing/settle.ts';
import { doseFor } from './dose.ts';
import { divisorWithin } from './interval.ts';
import type { Syringe } from './syringe.ts';

/** What the dose at hand would be measured with. */
export interface DoseAtHand {
  /** About what the animal weighs. */
  readonly weight: Mass;
  /** The platform's division. */
  readonly division: Mass;
  /** The rule for the animal, or every rule it may fall under while nobody knows which animal it is. */
  readonly regimens: readonly RegimenInForce[];
  readonly jug: Jug;
  readonly syringes: readonly Syringe[];
}

/** No weight is asked to be known better than this: few animals ever stand so still (our own guard). */
export const FINEST_NEED = 0.003;
/** However rough the dose, a weight worse known than this is not held: it is also logged and compared (our own guard). */
export const COARSEST_NEED = 0.007;
/** A doubt of this part of all the others adds an eighth to them. */
const PART_OF_OTHERS = 0.5;

/**
 * How well the weight must be known for the dose at hand: a standard uncertainty relative to it, from motion alone.
 *
 * Waiting for a stiller animal pays only while the weight is not drowned by jug, syringe and scale, so half of those
 * together is good enough; but the interval of the dose (k = 2) must stay between the regimen's floor and ceiling
 * wherever a better weight can keep it there. Between {@link FINEST_NEED} and {@link COARSEST_NEED}; the usual need where
 * no rule applies or no syringe measures the dose.
 */
export function needFor(at: DoseAtHand): number {
  return Math.min(COARSEST_NEED, ...at.regimens.map((regimen) => needUnder(regimen, at)));
}

function needUnder(regimen: RegimenInForce, { weight, division, jug, syringes }: DoseAtHand): number {
  const known = { mass: weight, uncertainty: scaleUncertainty(weight, division), at: 0, changedFrom: null };
  const dose = doseFor(known, regimen, jug, syringes);
  if (dose === null) return USUAL_NEED;
  const { budget, delivered, plan } = dose;
  const above = Math.hypot(jug.relative, plan.relative);
  const scale = known.uncertainty.value / weight.value;
  // What they leave to motion; nothing where they fill the margin on their own, or the dose lies beyond it.
  const within = (bound: number): number =>
    Math.sqrt(Math.max(0, divisorWithin(bound / delivered.value, above) ** 2 - scale ** 2));
  const up = regimen.ceiling.value > delivered.value ? within(regimen.ceiling.value) : 0;
  const floor = regimen.floor?.value ?? null;
  const down = floor === null ? Number.POSITIVE_INFINITY : floor < delivered.value ? within(floor) : 0;
  return Math.max(FINEST_NEED, Math.min(up, down, PART_OF_OTHERS * budget.relative));
}
