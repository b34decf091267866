import { packetById } from '../medicine/formulary.ts';
import { HOUR_MS } from '../moment.ts';
import { grams } from '../quantity/mass.ts';
import { add } from '../quantity/quantity.ts';
import { millilitres } from '../quantity/volume.ts';
import type { Mixing, MixingOutcome } from './state.ts';
import { go, type MixingWorld, refuse } from './world.ts';

/** Makes the label: what the jug came to, what it weighs, who mixed it and how long it is good. */
export function dissolve(mixing: Mixing, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'dissolve') return refuse(mixing, 'wrong-state');
  const { plan, achieved, vessel, water, seen } = mixing;
  const found = packetById(world.formulary, plan.packetId);
  if (found === undefined) return refuse(mixing, 'no-such-packet');
  return go({
    step: 'label',
    jug: {
      id: world.freshId,
      number: world.nextNumber,
      medicineId: plan.medicineId,
      packetId: plan.packetId,
      strength: achieved.strength,
      relative: achieved.relative,
      volume: achieved.finalVolume,
      mixedAtMs: world.now.wallMs,
      useByMs: world.now.wallMs + found.packet.jugLifeHours.value * HOUR_MS,
      by: world.by,
      clockTrusted: world.clockTrusted,
      discardedAtMs: null,
      weighed: {
        vesselId: vessel.id,
        letter: vessel.letter,
        empty: vessel.empty,
        contents: add(water.mass, seen),
        uncertainty: grams(Math.hypot(vessel.uncertainty.value, Math.SQRT2 * water.uncertainty.value)),
      },
      drawn: millilitres(0),
      drawnDoubt: millilitres(0),
      draws: 0,
    },
  });
}
