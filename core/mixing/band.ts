import type { Packet } from '../medicine/presentation.ts';
import { grams, type Mass } from '../quantity/mass.ts';
import { add } from '../quantity/quantity.ts';
import { scaleUncertainty } from '../weighing/reading.ts';
import { achievedStrength, withPowderSeen, withPowderWeighed } from './achieved.ts';
import type { MixPlan } from './plan.ts';

/**
 * The share (k = 2) within which a mix keeps to its planned strength, missing the mark and doubt together (our own
 * guard): half of what a syringe may be off at the smallest dose it measures. The two come to 11.2 %.
 */
export const STRENGTH_BUDGET = 0.05;

/** The standard uncertainty of a difference of two readings near a load (k = 1). */
export function differenceUncertainty(load: Mass, division: Mass): Mass {
  return grams(Math.SQRT2 * scaleUncertainty(load, division).value);
}

/** What the strength will be doubted by once the plan is carried out on a scale, as a share of it (k = 1). */
export function doubtAhead(plan: MixPlan, packet: Packet, jug: Mass, division: Mass): number {
  const load = add(jug, add(plan.water, plan.powder));
  const uncertainty = differenceUncertainty(load, division);
  const water = { mass: plan.water, uncertainty, temperature: plan.temperature };
  const before = achievedStrength(packet, plan.powder, water);
  const after =
    plan.amount.kind === 'packets'
      ? withPowderSeen(before, plan.powder, plan.powder, division)
      : withPowderWeighed(before, plan.powder, uncertainty);
  return after.relative;
}

/**
 * How far the water may end from its target, either way; `null` on a scale too coarse for this mix.
 *
 * As much as the mix is doubted by anyway, so that the pour never becomes the larger part of the doubt, and never so
 * much that the two together leave the budget. A finer scale asks for a finer pour.
 */
export function pourBand(plan: MixPlan, packet: Packet, jug: Mass, division: Mass): Mass | null {
  const doubt = doubtAhead(plan, packet, jug, division);
  const share = Math.min(doubt, STRENGTH_BUDGET - 2 * doubt);
  const perMl = plan.water.value / (plan.finalVolume.value - plan.powderVolume.value);
  const band = grams(share * plan.finalVolume.value * perMl);
  return band.value >= division.value ? band : null;
}
