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

/** Water in the jug as the scale saw it. */
export interface WeighedWater {
  readonly mass: Mass;
  /** Standard uncertainty of the mass (k = 1). */
  readonly uncertainty: Mass;
  readonly temperature: Temperature;
}

/** How far the water's temperature may be from the one chosen, in degC (our own guard). */
const TEMPERATURE_SLACK = 4;
/** How evenly a packet's active is spread through its powder, as a share of a part of it (an estimate). */
const UNEVEN = 0.01;

/**
 * The strength of an amount of powder of one kind of packet in the water the scale saw.
 *
 * Nothing is thrown away after a heavy pour: the strength follows from what is in the jug.
 */
export function achievedStrength(packet: Packet, powder: Mass, water: WeighedWater): Achieved {
  const here = waterVolume(water.mass, water.temperature);
  const finalVolume = add(here, millilitres(powder.value * packet.volumePerGram.value));
  const drift = Math.max(
    ...[-TEMPERATURE_SLACK, TEMPERATURE_SLACK].map((off) => {
      const other = celsius(Math.min(40, Math.max(0, water.temperature.value + off)));
      return Math.abs(waterVolume(water.mass, other).value - here.value);
    }),
  );
  const halfWidth = (packet.volumePerGram.high - packet.volumePerGram.low) / 2;
  const active = grams((packet.activeGrams.value * powder.value) / packet.grossGrams.value);
  return {
    finalVolume,
    strength: strengthOf(active, finalVolume),
    ...combined([
      { of: 'active in the packet', relative: packet.activeUncertainty.value },
      { of: 'water weighed', relative: water.uncertainty.value / finalVolume.value },
      { of: 'water temperature', relative: rectangular(drift) / finalVolume.value },
      { of: 'volume of the powder', relative: rectangular(powder.value * halfWidth) / finalVolume.value },
    ]),
  };
}

function combined(parts: readonly Contribution[]): Pick<Achieved, 'relative' | 'contributions'> {
  const { relative, contributions } = combine(parts);
  return { relative, contributions };
}

/**
 * The strength once whole packets were seen to arrive: the same value, and less sure the further the rise was from
 * their printed mass.
 *
 * The printed active mass is better than a kitchen scale; what the scale misses may have been spilled.
 */
export function withPowderSeen(achieved: Achieved, powder: Mass, rise: Mass, division: Mass): Achieved {
  const off = Math.max(Math.abs(rise.value - powder.value), division.value);
  const seen = { of: 'powder seen to arrive', relative: rectangular(off) / powder.value };
  return { ...achieved, ...combined([...achieved.contributions, seen]) };
}

/**
 * The strength of a part of a packet that was weighed in: it follows from the rise itself, and is as sure as the
 * scale is of it (`uncertainty`, k = 1).
 */
export function withPowderWeighed(achieved: Achieved, rise: Mass, uncertainty: Mass): Achieved {
  const parts = [
    { of: 'powder weighed', relative: uncertainty.value / rise.value },
    { of: 'evenness of the powder', relative: rectangular(UNEVEN) },
  ];
  return { ...achieved, ...combined([...achieved.contributions, ...parts]) };
}
