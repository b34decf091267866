import { packetById } from '../medicine/formulary.ts';
import { HOUR_MS } from '../moment.ts';
import { grams } from '../quantity/mass.ts';
import { add } from '../quantity/quantity.ts';
import { millilitres } from '../quantity/volume.ts';
import { packetsUsed } from './cancelling.ts';
import type { Mixing, MixingOutcome } from './state.ts';
import { go, type MixingWorld, refuse } from './world.ts';

/** Makes the label: what the jug came to, what it weighs, who mixed it and how long it is good. */
export function dissolve(mixing: Mixing, world: MixingWorld): MixingOutcome {
  if (mixing.step !== 'dissolve') return refuse(mixing, 'wrong-state');
  const { plan, achieved, vessel, water, seen } = mixing;
  const found = packetById(world.formulary, plan.packetId);
  if (found === undefined) return refuse(mixing, 'no-such-packet');
  const lot = world.stock.find(({ id }) => id === plan.lotId);
  const useByMs = world.now.wallMs + found.packet.jugLifeHours.value * HOUR_MS;
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
      // The clock may be wrong where a lot past its month was let in: then its month says nothing of the jug either.
      useByMs: lot === undefined || !world.clockTrusted ? useByMs : Math.min(useByMs, lot.expiresAtMs),
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
      stock:
        lot === undefined
          ? null
          : {
              lotId: lot.id,
              lot: lot.lot,
              expiresAtMs: lot.expiresAtMs,
              pieces: packetsUsed(plan, seen, found.packet),
            },
      drawn: millilitres(0),
      drawnDoubt: millilitres(0),
      draws: 0,
    },
  });
}
