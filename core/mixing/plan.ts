import type { Packet } from '../medicine/presentation.ts';
import { grams, type Mass } from '../quantity/mass.ts';
import { add, scale, subtract } from '../quantity/quantity.ts';
import { type Strength, strengthOf } from '../quantity/strength.ts';
import type { Temperature } from '../quantity/temperature.ts';
import { millilitres, type Volume } from '../quantity/volume.ts';
import { waterReading } from '../water/density.ts';

/**
 * What a named volume means: `make-up-to` is powder and water together, `add-to` is the water the powder goes into.
 *
 * The two differ by the volume of the powder itself, some 4 % of a quart for a packet of 52 g.
 */
export type MixMode = 'make-up-to' | 'add-to';

/** How much powder: whole packets, as they are printed, or a share of one that is weighed in. */
export type PowderAmount =
  | { readonly kind: 'packets'; readonly count: number }
  | { readonly kind: 'weighed'; readonly share: number };

/** How much volume a packet goes into, and in which of the two meanings. */
export interface Recipe {
  readonly perPacket: Volume;
  readonly mode: MixMode;
}

/** How much water to weigh out for the powder, and what it will make. */
export interface MixPlan {
  readonly medicineId: string;
  readonly packetId: string;
  readonly recipe: Recipe;
  readonly amount: PowderAmount;
  readonly temperature: Temperature;
  /** The volume as it is named: the recipe's, as often as there are packets. */
  readonly namedVolume: Volume;
  readonly finalVolume: Volume;
  /** The volume the dissolved powder itself takes up. */
  readonly powderVolume: Volume;
  /** What the scale shows when the water alone is right. */
  readonly water: Mass;
  /** What the scale gains when the powder is in. */
  readonly powder: Mass;
  readonly active: Mass;
  readonly strength: Strength;
  /** The lot of the farm's stock the powder comes from; `null` where it comes from elsewhere. */
  readonly lotId: string | null;
}

/** One whole packet. */
export const ONE_PACKET: PowderAmount = { kind: 'packets', count: 1 };

/** How many packets an amount is: 2 for two, 0.5 for half of one. */
export function packetsIn(amount: PowderAmount): number {
  return amount.kind === 'packets' ? amount.count : amount.share;
}

/** The plan for an amount of powder in a recipe, with water at a temperature of 0 to 40 degC. */
export function planMix(
  medicineId: string,
  packet: Packet,
  recipe: Recipe,
  amount: PowderAmount,
  temperature: Temperature,
  lotId: string | null = null,
): MixPlan {
  const packets = packetsIn(amount);
  const namedVolume = scale(recipe.perPacket, packets);
  const powder = grams(packet.grossGrams.value * packets);
  const active = grams(packet.activeGrams.value * packets);
  const powderVolume = millilitres(powder.value * packet.volumePerGram.value);
  const madeUp = recipe.mode === 'make-up-to';
  const finalVolume = madeUp ? namedVolume : add(namedVolume, powderVolume);
  const waterVolume = madeUp ? subtract(namedVolume, powderVolume) : namedVolume;
  return {
    medicineId,
    packetId: packet.id,
    recipe,
    amount,
    temperature,
    namedVolume,
    finalVolume,
    powderVolume,
    water: waterReading(waterVolume, temperature),
    powder,
    active,
    strength: strengthOf(active, finalVolume),
    lotId,
  };
}
