import { packetById } from '../medicine/formulary.ts';
import { achievedStrength } from '../mixing/achieved.ts';
import { differenceUncertainty } from '../mixing/band.ts';
import { grams } from '../quantity/mass.ts';
import { subtract } from '../quantity/quantity.ts';
import type { Mixing, MixingAt, MixingOutcome } from './state.ts';
import { watchPour } from './watch-pour.ts';
import { atRest, divisionOf, go, type MixingWorld, refuse } from './world.ts';

/**
 * A mix this much weaker or stronger than planned is asked about, as a share (our own guard; the same at which a
 * dose is asked about): a gallon poured for a quart is four times too weak.
 */
export const FAR_FROM_PLAN = 0.1;

/** Follows the jug while water goes in. */
export function followPour(mixing: MixingAt<'pour'>, world: MixingWorld): MixingOutcome {
  const bench = world.benchReady ? world.bench : { ...world.bench, live: null };
  const watch = watchPour(mixing.watch, bench, mixing.jugMass, world.now.uptimeMs);
  return go({ ...mixing, watch });
}

/** Ends the pour: enough water, at rest, in a jug that was never lost from sight. */
export function finishPour(mixing: Mixing, deliberate: boolean, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'pour') return refuse(mixing, 'wrong-state');
  const mass = atRest(world);
  if (typeof mass === 'string') return refuse(mixing, mass);
  const { plan, band } = mixing;
  const watch = watchPour(mixing.watch, world.bench, mixing.jugMass, world.now.uptimeMs);
  if (watch.place !== 'on') return refuse(mixing, 'jug-not-back');
  const found = packetById(world.formulary, plan.packetId);
  if (found === undefined) return refuse(mixing, 'no-such-packet');
  const water = subtract(mass, mixing.jugMass);
  if (water.value < plan.water.value - band.value) return refuse(mixing, 'too-little-water');
  const uncertainty = differenceUncertainty(mass, divisionOf(world));
  const achieved = achievedStrength(found.packet, plan.powder, {
    mass: water,
    uncertainty,
    temperature: plan.temperature,
  });
  const weak = achieved.strength.value < (1 - FAR_FROM_PLAN) * plan.strength.value;
  if (weak && !deliberate) return refuse(mixing, 'far-too-much-water');
  const { vessel, jugMass } = mixing;
  return go({
    step: 'powder',
    plan,
    vessel,
    jugMass,
    band,
    water: { mass: water, uncertainty },
    achieved,
    verdict: 'none',
    seen: grams(0),
  });
}
