import { packetById } from '../medicine/formulary.ts';
import { achievedStrength, withPowderSeen, withPowderWeighed } from '../mixing/achieved.ts';
import { differenceUncertainty, STRENGTH_BUDGET } from '../mixing/band.ts';
import { judgePowder } from '../mixing/powder.ts';
import type { Mass } from '../quantity/mass.ts';
import { subtract } from '../quantity/quantity.ts';
import { FAR_FROM_PLAN } from './pouring.ts';
import type { Mixing, MixingAt, MixingOutcome } from './state.ts';
import { watchPart, watchPowder } from './watch-powder.ts';
import { atRest, divisionOf, go, type MixingWorld, refuse } from './world.ts';

/**
 * Watches the powder arrive. Whole packets, at rest, move the work on by themselves; a part that is weighed in waits
 * for a press.
 *
 * A packet tipped in behind the others takes it back. Once they are in, a lifted jug says nothing.
 */
export function weighPowder(
  mixing: MixingAt<'powder'> | MixingAt<'dissolve'>,
  world: MixingWorld,
): MixingOutcome {
  const { bench } = world;
  if (!world.benchReady || bench.steady === null || bench.net) return go(mixing);
  const rise = subtract(subtract(bench.steady, mixing.jugMass), mixing.water.mass);
  const { powder, amount } = mixing.plan;
  const division = divisionOf(world);
  if (mixing.step === 'dissolve') {
    const tooMuch = amount.kind === 'packets' && judgePowder(rise, powder, division) === 'too-much';
    return tooMuch ? go({ ...mixing, step: 'powder', verdict: 'too-much', seen: rise }) : go(mixing);
  }
  if (amount.kind === 'weighed') return go({ ...mixing, ...watchPart(mixing, rise, powder, division) });
  const watched = watchPowder(mixing, rise, powder, division);
  return watched.verdict === 'whole' ? packetsIn(mixing, rise, world) : go({ ...mixing, ...watched });
}

function packetsIn(mixing: MixingAt<'powder'>, rise: Mass, world: MixingWorld): MixingOutcome {
  const achieved = withPowderSeen(mixing.achieved, mixing.plan.powder, rise, divisionOf(world));
  return dissolving(mixing, achieved, rise);
}

function dissolving(
  { plan, vessel, jugMass, band, water }: MixingAt<'powder'>,
  achieved: MixingAt<'dissolve'>['achieved'],
  seen: Mass,
): MixingOutcome {
  return go({ step: 'dissolve', plan, vessel, jugMass, band, water, achieved, seen });
}

/** Takes the powder that was weighed in as it is: the strength follows from it. */
export function finishPowder(mixing: Mixing, deliberate: boolean, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'powder' || mixing.plan.amount.kind !== 'weighed') return refuse(mixing, 'wrong-state');
  const mass = atRest(world);
  if (typeof mass === 'string') return refuse(mixing, mass);
  const { plan, water, verdict } = mixing;
  const found = packetById(world.formulary, plan.packetId);
  if (found === undefined) return refuse(mixing, 'no-such-packet');
  if (verdict === 'jug-lifted' || verdict === 'jug-changed') return refuse(mixing, 'jug-not-back');
  const rise = subtract(subtract(mass, mixing.jugMass), water.mass);
  if (verdict === 'none' || !(rise.value > 0)) return refuse(mixing, 'no-powder-seen');
  const before = achievedStrength(found.packet, rise, { ...water, temperature: plan.temperature });
  const achieved = withPowderWeighed(before, rise, differenceUncertainty(mass, divisionOf(world)));
  if (2 * achieved.relative > STRENGTH_BUDGET) return refuse(mixing, 'scale-too-coarse');
  const off = Math.abs(achieved.strength.value / plan.strength.value - 1);
  if (off > FAR_FROM_PLAN && !deliberate) return refuse(mixing, 'powder-far-off');
  return dissolving(mixing, achieved, rise);
}
