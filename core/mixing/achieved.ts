import { type Contribution, combine, rectangular } from '../dosing/uncertainty.ts';
import type { Packet } from '../medicine/presentation.ts';
import { grams, type Mass } from '../quantity/mass.ts';
import { add } from '../quantity/quantity.ts';
import { type Strength, strengthOf } from '../quantity/strength.ts';
import { celsius, type Temperature } from '../quantity/temperature.ts';
import { millilitres, type Volume } from '../quantity/volume.ts';
import { waterVolume } from '../water/density.ts';

/** The strength a jug really came to. */
export interface Achieved {
  readonly finalVolume: Volume;
  readonly strength: Strength;
  /** Standard uncertainty of the strength as a share of it (k = 1), with what it is made of. */
  readonly relative: number;
  readonly contributions: readonly Contribution[];
}

/** How far the water's temperature may be from the one chosen, in degC (our own guard). */
const TEMPERATURE_SLACK = 4;

/**
 * The strength of one whole packet in the water the scale saw.
 *
 * Nothing is thrown away after a heavy pour: the strength follows from what is in the jug.
 */
export function achievedStrength(
  packet: Packet,
  water: Mass,
  waterUncertainty: Mass,
  temperature: Temperature,
): Achieved {
  const gross = packet.grossGrams.value;
  const finalVolume = add(waterVolume(water, temperature), millilitres(gross * packet.volumePerGram.value));
  const here = waterVolume(water, temperature).value;
  const drift = Math.max(
    ...[-TEMPERATURE_SLACK, TEMPERATURE_SLACK].map((off) => {
      const other = celsius(Math.min(40, Math.max(0, temperature.value + off)));
      return Math.abs(waterVolume(water, other).value - here);
    }),
  );
  const halfWidth = (packet.volumePerGram.high - packet.volumePerGram.low) / 2;
  const budget = combine([
    { of: 'active in the packet', relative: packet.activeUncertainty.value },
    { of: 'water weighed', relative: waterUncertainty.value / finalVolume.value },
    { of: 'water temperature', relative: rectangular(drift) / finalVolume.value },
    { of: 'volume of the powder', relative: rectangular(gross * halfWidth) / finalVolume.value },
  ]);
  return {
    finalVolume,
    strength: strengthOf(grams(packet.activeGrams.value), finalVolume),
    relative: budget.relative,
    contributions: budget.contributions,
  };
}

/**
 * The strength once the powder was seen to arrive: the same value, and less sure the further the rise was from the
 * packet's printed mass.
 *
 * The printed active mass is better than a kitchen scale; what the scale misses may have been spilled.
 */
export function withPowderSeen(achieved: Achieved, packet: Packet, rise: Mass, division: Mass): Achieved {
  const off = Math.max(Math.abs(rise.value - packet.grossGrams.value), division.value);
  const seen = { of: 'powder seen to arrive', relative: rectangular(off) / packet.grossGrams.value };
  const budget = combine([...achieved.contributions, seen]);
  return { ...achieved, relative: budget.relative, contributions: budget.contributions };
}
