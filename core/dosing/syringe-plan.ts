import { fromSteps, stepsIn } from '../quantity/round.ts';
import { millilitres, type Volume } from '../quantity/volume.ts';
import { drawTolerance, type Syringe } from './syringe.ts';
import { rectangular } from './uncertainty.ts';

/** How to measure a dose with one syringe. */
export interface SyringePlan {
  readonly syringe: Syringe;
  /** The marks to draw to, one for each draw, largest first. */
  readonly draws: readonly Volume[];
  /** The sum of the draws: what is shown, said, labelled and logged. */
  readonly total: Volume;
  /** Standard uncertainty of the total as a share of it (k = 1): tolerance, and half a mark of reading each draw. */
  readonly relative: number;
  /** How far rounding to the marks moved the dose, as a share of the exact one; negative is less. */
  readonly rounding: number;
}

/** More draws than this are not asked of one hand. */
const MAX_DRAWS = 3;
/** Total errors this close, as shares of the dose, are as good as each other. */
const AS_GOOD = 0.02;
/** A draw that cannot be measured within this share is not offered. */
const WORST_DRAW = 0.1;

/**
 * The best way to measure an exact volume with the syringes on hand, or `null` where none can.
 *
 * Best is the smallest total error (rounding and syringe together); among those that come within two hundredths of
 * the dose of it, the fewest draws, then the smaller syringe: a hand pays more for a further draw than the dose gains. No plan rounds past `most`, and no draw is smaller than its syringe measures within 10 %.
 */
export function planSyringe(exact: Volume, most: Volume, syringes: readonly Syringe[]): SyringePlan | null {
  const plans = syringes.flatMap((syringe) => plansWith(syringe, exact, most));
  const least = Math.min(...plans.map(totalError));
  const asGood = plans.filter((plan) => totalError(plan) <= least + AS_GOOD);
  return asGood.sort(simplestFirst)[0] ?? null;
}

function plansWith(syringe: Syringe, exact: Volume, most: Volume): SyringePlan[] {
  const graduation = syringe.graduation.value;
  const nearest = stepsIn(exact.value, graduation, 'nearest');
  const steps = Math.min(nearest, stepsIn(most.value, graduation, 'down'));
  const perDraw = stepsIn(syringe.capacity.value, graduation, 'down');
  const plans: SyringePlan[] = [];
  for (
    let count = Math.max(1, Math.ceil(steps / perDraw));
    count <= MAX_DRAWS && count <= steps;
    count += 1
  ) {
    const plan = planOf(syringe, exact, splitEvenly(steps, count));
    if (plan !== null) plans.push(plan);
  }
  return plans;
}

function splitEvenly(steps: number, count: number): number[] {
  const small = Math.floor(steps / count);
  const larger = steps - small * count;
  return Array.from({ length: count }, (_, draw) => (draw < larger ? small + 1 : small));
}

function planOf(syringe: Syringe, exact: Volume, steps: readonly number[]): SyringePlan | null {
  const graduation = syringe.graduation.value;
  const draws = steps.map((count) => millilitres(fromSteps(count, graduation)));
  const tolerances = draws.map((draw) => drawTolerance(syringe, draw).value);
  if (draws.some((draw, i) => (tolerances[i] ?? 0) > WORST_DRAW * draw.value)) return null;
  const total = millilitres(
    fromSteps(
      steps.reduce((sum, count) => sum + count, 0),
      graduation,
    ),
  );
  // One syringe is off by the same share at every draw, so its tolerances add; the readings are independent.
  const tolerance = rectangular(tolerances.reduce((sum, value) => sum + value, 0));
  const reading = rectangular(graduation / 2) * Math.sqrt(draws.length);
  return {
    syringe,
    draws,
    total,
    relative: Math.hypot(tolerance, reading) / total.value,
    rounding: total.value / exact.value - 1,
  };
}

function totalError(plan: SyringePlan): number {
  return Math.abs(plan.rounding) + 2 * plan.relative;
}

function simplestFirst(a: SyringePlan, b: SyringePlan): number {
  return (
    a.draws.length - b.draws.length ||
    a.syringe.capacity.value - b.syringe.capacity.value ||
    totalError(a) - totalError(b)
  );
}
