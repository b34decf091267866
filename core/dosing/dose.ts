import type { RegimenInForce } from '../medicine/in-force.ts';
import type { Jug } from '../mixing/jug.ts';
import { type ActiveAmount, activeFor, mgPerKg, rateDelivered, volumeHolding } from '../quantity/strength.ts';
import type { Volume } from '../quantity/volume.ts';
import type { Held } from '../weighing/settle.ts';
import { type Interval, quotientInterval } from './interval.ts';
import type { Syringe } from './syringe.ts';
import { planSyringe, type SyringePlan } from './syringe-plan.ts';
import { type Budget, combine } from './uncertainty.ts';

/** What one animal is to be given, how to measure it, and what that really delivers. */
export interface Dose {
  /** Weight times rate over strength, unrounded. */
  readonly exact: Volume;
  readonly plan: SyringePlan;
  /** What the measured volume delivers in mg/kg, with its interval at k = 2. */
  readonly delivered: Interval & { readonly value: number };
  readonly budget: Budget;
}

/** What a dose is worked out from: the weight held, the rule for the animal, and the jug in hand. */
export interface DoseInput {
  readonly weight: Held;
  readonly regimen: RegimenInForce;
  readonly jug: Jug;
}

/** The exact volume for a held weight: weight times rate over strength. */
export function exactDose(weight: Held, regimen: RegimenInForce, jug: Pick<Jug, 'strength'>): Volume {
  return volumeHolding(activeFor(weight.mass, mgPerKg(regimen.target.value)), jug.strength);
}

/** The dose with the best syringe on hand, or `null` where no syringe can measure it. */
export function doseFor(
  weight: Held,
  regimen: RegimenInForce,
  jug: Pick<Jug, 'strength' | 'relative'>,
  syringes: readonly Syringe[],
): Dose | null {
  const exact = exactDose(weight, regimen, jug);
  const most = volumeHolding(activeFor(weight.mass, mgPerKg(regimen.ceiling.value)), jug.strength);
  return measured(exact, most, weight, jug, syringes);
}

/** The rest of a dose of which only a part went in: its volume, rounded down and never up. */
export function topUpFor(
  rest: ActiveAmount,
  weight: Held,
  jug: Pick<Jug, 'strength' | 'relative'>,
  syringes: readonly Syringe[],
): Dose | null {
  const exact = volumeHolding(rest, jug.strength);
  return measured(exact, exact, weight, jug, syringes);
}

function measured(
  exact: Volume,
  most: Volume,
  weight: Held,
  jug: Pick<Jug, 'strength' | 'relative'>,
  syringes: readonly Syringe[],
): Dose | null {
  const plan = planSyringe(exact, most, syringes);
  if (plan === null) return null;
  const weighed = weight.uncertainty.value / weight.mass.value;
  const budget = combine([
    { of: 'scale and animal', relative: weighed },
    { of: 'strength of the jug', relative: jug.relative },
    { of: 'syringe', relative: plan.relative },
  ]);
  const value = rateDelivered(plan.total, jug.strength, weight.mass).value;
  const interval = quotientInterval(value, Math.hypot(jug.relative, plan.relative), weighed);
  return { exact, plan, delivered: { value, ...interval }, budget };
}
