import { grams } from '../quantity/mass.ts';
import { mgPerMl } from '../quantity/strength.ts';
import { type Dose, type DoseInput, doseFor } from './dose.ts';
import { SYRINGE_CATALOGUE, type Syringe } from './syringe.ts';
import { AS_GOOD } from './syringe-plan.ts';

/** A change that would make a dose surer or easier, and the dose as it would be then. */
export interface Advice {
  readonly change:
    | 'other-syringe'
    /** Another syringe that is as good in fewer draws. */
    | 'fewer-draws'
    /** The same packet in twice the water, and twice the volume drawn. */
    | 'double-dilution'
    /** A weight known twice as well: a finer scale, or an animal that stands still. */
    | 'surer-weight';
  readonly then: Dose;
}

/** A change is worth saying where it brings the dose nearer to its target by this share of it (our own guard). */
const WORTH_SAYING = 0.01;

/**
 * What would make a dose surer, best first: none where nothing gains a hundredth of the target.
 *
 * Each change is worked out as a dose of its own. A dilution that would take more draws than now is no advice, and what
 * was not mixed here is dosed as it comes.
 */
export function adviceFor(
  input: DoseInput,
  dose: Dose,
  onHand: readonly Syringe[],
  mixedHere: boolean,
): Advice[] {
  const { weight, regimen, jug } = input;
  const target = regimen.target.value;
  const now = farthest(dose, target);
  const draws = dose.plan.draws.length;
  const better = (change: Advice['change'], then: Dose | null): Advice[] =>
    then !== null && then.plan.draws.length <= draws && farthest(then, target) <= now - WORTH_SAYING
      ? [{ change, then }]
      : [];
  const shop = SYRINGE_CATALOGUE.filter((syringe) => !onHand.some(({ id }) => id === syringe.id));
  const thin = { ...jug, strength: mgPerMl(jug.strength.value / 2) };
  const sure = { ...weight, uncertainty: grams(weight.uncertainty.value / 2) };
  const found = [
    ...better('double-dilution', mixedHere ? doseFor(weight, regimen, thin, onHand) : null),
    ...better('other-syringe', doseFor(weight, regimen, jug, shop)),
    ...better('surer-weight', doseFor(sure, regimen, jug, onHand)),
  ].sort((a, b) => farthest(a.then, target) - farthest(b.then, target));
  const fewer = draws > 1 ? fewerDraws(input, shop, draws, now + AS_GOOD) : [];
  return [
    ...found,
    ...fewer.filter(({ then }) => !found.some((one) => one.then.plan.syringe === then.plan.syringe)),
  ];
}

/** The syringe not on hand that needs fewer draws and leaves the dose no farther from its target than `most`. */
function fewerDraws(
  { weight, regimen, jug }: DoseInput,
  shop: readonly Syringe[],
  draws: number,
  most: number,
): Advice[] {
  const target = regimen.target.value;
  return shop
    .flatMap((syringe) => doseFor(weight, regimen, jug, [syringe]) ?? [])
    .filter((then) => then.plan.draws.length < draws && farthest(then, target) <= most)
    .sort((a, b) => a.plan.draws.length - b.plan.draws.length || farthest(a, target) - farthest(b, target))
    .slice(0, 1)
    .map((then) => ({ change: 'fewer-draws', then }));
}

/** How far from its target the dose may be, as a share of it: rounding and doubt together. */
function farthest({ delivered }: Dose, target: number): number {
  return Math.max(delivered.high - target, target - delivered.low) / target;
}
