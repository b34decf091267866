import type { Species } from '../herd/animal.ts';
import type { RegimenInForce } from '../medicine/in-force.ts';
import { kilograms, type Mass, massIn, pounds } from '../quantity/mass.ts';
import { activeFor, mgPerKg, rateDelivered, type Strength, volumeHolding } from '../quantity/strength.ts';
import type { Syringe } from './syringe.ts';
import { planSyringe, type SyringePlan } from './syringe-plan.ts';

/** One row of a dose table. */
export interface DoseTableRow {
  readonly weight: Mass;
  /** How to measure it; `null` where no syringe on hand can. */
  readonly plan: SyringePlan | null;
  /** What it gives the lightest and the heaviest animal that reads this row, in mg/kg; `null` without a plan. */
  readonly delivered: { readonly lightest: number; readonly heaviest: number } | null;
}

/** The weights a table runs over: from and to, in the unit it is printed in. Our own choice, wider than the herd. */
const RANGE: Readonly<Record<'kg' | 'lb', Readonly<Record<Species, readonly [number, number]>>>> = {
  kg: { goat: [4, 120], sheep: [4, 140], cattle: [40, 900] },
  lb: { goat: [8, 260], sheep: [8, 300], cattle: [90, 2000] },
};
/** Two rows lie no further apart than this share of the lighter one, so that the nearest row is within half of it. */
const APART = 0.1;
const STEPS = [100, 50, 20, 10, 5, 2, 1, 0.5] as const;

/** The weights of a table for a species: round numbers of the unit, lightest first, each at most 10 % above the last. */
export function tableWeights(species: Species, unit: 'kg' | 'lb'): Mass[] {
  const [from, to] = RANGE[unit][species];
  const weights: Mass[] = [];
  let at = from;
  while (at <= to) {
    weights.push(unit === 'kg' ? kilograms(at) : pounds(at));
    const here = at;
    const step = STEPS.find((size) => size <= APART * here) ?? STEPS[STEPS.length - 1] ?? 1;
    at = Math.floor(here / step + 1 + 1e-9) * step;
  }
  return weights;
}

/**
 * A dose table by weight, for when nothing can be weighed and worked out one by one.
 *
 * An animal reads the row nearest its weight, the lighter of two as near. So a row serves from half way to the row below
 * to half way to the row above, and no row is drawn that would pass the ceiling for the lightest animal that reads it.
 */
export function doseTable(
  regimen: RegimenInForce,
  strength: Strength,
  syringes: readonly Syringe[],
  weights: readonly Mass[],
): DoseTableRow[] {
  const target = mgPerKg(regimen.target.value);
  const ceiling = mgPerKg(regimen.ceiling.value);
  return weights.map((weight, i) => {
    const lightest = halfway(weights[i - 1] ?? weight, weight);
    const heaviest = halfway(weight, weights[i + 1] ?? weight);
    const exact = volumeHolding(activeFor(weight, target), strength);
    const plan = planSyringe(exact, volumeHolding(activeFor(lightest, ceiling), strength), syringes);
    const rate = (animal: Mass) => (plan === null ? 0 : rateDelivered(plan.total, strength, animal).value);
    return {
      weight,
      plan,
      delivered: plan === null ? null : { lightest: rate(lightest), heaviest: rate(heaviest) },
    };
  });
}

function halfway(a: Mass, b: Mass): Mass {
  return kilograms((massIn(a, 'kg') + massIn(b, 'kg')) / 2);
}
