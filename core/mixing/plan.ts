import type { Packet } from '../medicine/presentation.ts';
import { grams, type Mass } from '../quantity/mass.ts';
import { subtract } from '../quantity/quantity.ts';
import { type Strength, strengthOf } from '../quantity/strength.ts';
import type { Temperature } from '../quantity/temperature.ts';
import { millilitres, type Volume } from '../quantity/volume.ts';
import { waterReading } from '../water/density.ts';

/** How much water to weigh out for one packet, and what it will make. */
export interface MixPlan {
  readonly medicineId: string;
  readonly packetId: string;
  readonly mode: 'make-up-to';
  readonly temperature: Temperature;
  readonly finalVolume: Volume;
  /** The volume the dissolved powder itself takes up. */
  readonly powderVolume: Volume;
  /** What the scale shows when the water alone is right. */
  readonly water: Mass;
  /** What the scale gains when the whole packet is in. */
  readonly powder: Mass;
  readonly strength: Strength;
}

/** The plan for one packet made up to its own volume, with water at a temperature of 0 to 40 degC. */
export function planMix(medicineId: string, packet: Packet, temperature: Temperature): MixPlan {
  const finalVolume = millilitres(packet.madeUpToMl.value);
  const powderVolume = millilitres(packet.grossGrams.value * packet.volumePerGram.value);
  return {
    medicineId,
    packetId: packet.id,
    mode: 'make-up-to',
    temperature,
    finalVolume,
    powderVolume,
    water: waterReading(subtract(finalVolume, powderVolume), temperature),
    powder: grams(packet.grossGrams.value),
    strength: strengthOf(grams(packet.activeGrams.value), finalVolume),
  };
}
