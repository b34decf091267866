import { packetById } from '../medicine/formulary.ts';
import { pourBand } from '../mixing/band.ts';
import type { MixPlan } from '../mixing/plan.ts';
import { isTooCoarse } from '../mixing/powder.ts';
import { freshLetter, matchVessel, type Vessel } from '../mixing/vessel.ts';
import type { Mass } from '../quantity/mass.ts';
import { scaleUncertainty } from '../weighing/reading.ts';
import type { Mixing, MixingEffect, MixingOutcome } from './state.ts';
import { POUR_BEGINS } from './watch-pour.ts';
import { atRest, divisionOf, go, type MixingWorld, refuse } from './world.ts';

/** Nothing lighter than this is a jug, in grams. */
const LIGHTEST_JUG = 20;

/** Looks at the jug that was set down: a known one goes on, anything else is asked about. */
export function placeJug(mixing: Mixing, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'place' && mixing.step !== 'new-jug') return refuse(mixing, 'wrong-state');
  const { plan } = mixing;
  const mass = atRest(world);
  if (typeof mass === 'string') return refuse(mixing, mass);
  if (mass.value < LIGHTEST_JUG) return refuse(mixing, 'no-jug-on-scale');
  const uncertainty = world.bench.uncertainty ?? scaleUncertainty(mass, divisionOf(world));
  const match = matchVessel(mass, uncertainty, world.vessels, world.jugs, world.now.wallMs);
  if (match.known) return stand(mixing, plan, match.vessel, mass, [], world);
  const letter = freshLetter(world.vessels);
  return go({ step: 'new-jug', plan, jugMass: mass, uncertainty, doubt: match.doubt, letter });
}

/** Learns the jug on the bench by the word of a person who looked into it. */
export function learnJug(
  mixing: Mixing,
  vesselId: string | null,
  deliberate: boolean,
  world: MixingWorld,
): MixingOutcome {
  if (mixing.step !== 'new-jug') return refuse(mixing, 'wrong-state');
  if (mixing.doubt.kind === 'holds-mix') return refuse(mixing, 'holds-mix');
  if (!deliberate) return refuse(mixing, 'needs-held-word');
  const mass = atRest(world);
  if (typeof mass === 'string') return refuse(mixing, mass);
  // What was asked about must still be what stands there.
  if (Math.abs(mass.value - mixing.jugMass.value) > 2 * divisionOf(world).value)
    return placeJug(mixing, world);
  const known = world.vessels.find(({ id, retiredAtMs }) => id === vesselId && retiredAtMs === null);
  if (vesselId !== null && known === undefined) return refuse(mixing, 'no-such-vessel');
  const vessel: Vessel = {
    id: world.freshId,
    letter: known?.letter ?? mixing.letter,
    empty: mass,
    uncertainty: mixing.uncertainty,
    learnedAtMs: world.now.wallMs,
    by: world.by,
    retiredAtMs: null,
  };
  return stand(mixing, mixing.plan, vessel, mass, [{ do: 'learn-vessel', vessel }], world);
}

function stand(
  mixing: Mixing,
  plan: MixPlan,
  vessel: Vessel,
  jugMass: Mass,
  effects: readonly MixingEffect[],
  world: MixingWorld,
): MixingOutcome {
  const found = packetById(world.formulary, plan.packetId);
  if (found === undefined) return refuse(mixing, 'no-such-packet');
  const division = divisionOf(world);
  const band = pourBand(plan, found.packet, jugMass, division);
  const blind = plan.amount.kind === 'packets' && isTooCoarse(plan.powder, division);
  if (band === null || blind) return refuse(mixing, 'scale-too-coarse');
  return {
    mixing: { step: 'pour', plan, vessel, jugMass, band, watch: POUR_BEGINS },
    effects,
    refused: null,
  };
}
