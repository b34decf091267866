import { GOAT_CHART, SHEEP_CHART } from '../formulary/sources.ts';
import type { Packet } from '../medicine/presentation.ts';
import { grams } from '../quantity/mass.ts';
import { scale } from '../quantity/quantity.ts';
import { type Strength, strengthOf } from '../quantity/strength.ts';
import { millilitres, usQuarts, type Volume } from '../quantity/volume.ts';
import type { Recipe } from './plan.ts';

/** A volume a packet may go into. */
export interface Dilution {
  readonly perPacket: Volume;
  /** Whether a source prints it for this packet, it is a half or a multiple of one that does, or a keeper entered it. */
  readonly origin: 'printed' | 'sums' | 'entered';
  readonly source: string;
}

/** Volumes printed for a packet beside the one it is sold for. */
const PRINTED: Readonly<Record<string, readonly Dilution[]>> = {
  'levamisole-52g': [
    {
      perPacket: usQuarts(2),
      origin: 'printed',
      source: `${SHEEP_CHART}: for lambs one packet in two quarts, and twice the volume`,
    },
    {
      perPacket: millilitres(1048),
      origin: 'printed',
      source: `${GOAT_CHART}: one packet in 1,048 mL, 44.7 mg/mL`,
    },
  ],
};

/** How often a packet's own volume may be taken by the sums alone: half of it, double, four times. */
const MULTIPLES = [0.5, 2, 4] as const;

/**
 * The strongest a mix of a medicine is known to dissolve, in mg/mL.
 *
 * Levamisole hydrochloride: 544.5 g made up to 3 L, FDA freedom-of-information summary, NADA 200-225, 1998-08-27.
 */
const STRONGEST: Readonly<Record<string, number>> = { levamisole: 181.5 };

/** More water than this many times the packet's own volume is a slipped point: a dose would be a drink (our own guard). */
export const WEAKEST_TIMES = 8;

/** Half a millilitre tells two volumes of a jug apart. */
const SAME_ML = 0.5;

function strengthIn(packet: Packet, { perPacket, mode }: Recipe): Strength {
  const powder = packet.grossGrams.value * packet.volumePerGram.value;
  const volume = mode === 'make-up-to' ? perPacket.value : perPacket.value + powder;
  return strengthOf(grams(packet.activeGrams.value), millilitres(volume));
}

/** The volumes a packet may go into, smallest first: those printed for it, and half and multiples of its own. */
export function dilutionsFor(medicineId: string, packet: Packet): Dilution[] {
  const own: Dilution = {
    perPacket: millilitres(packet.madeUpToMl.value),
    origin: 'printed',
    source: packet.madeUpToMl.source,
  };
  const sums = MULTIPLES.map(
    (times): Dilution => ({
      perPacket: scale(own.perPacket, times),
      origin: 'sums',
      source: `${times} times the packet’s own volume`,
    }),
  );
  const found: Dilution[] = [];
  for (const dilution of [own, ...(PRINTED[packet.id] ?? []), ...sums]) {
    const known = found.some(({ perPacket }) => isSame(perPacket, dilution.perPacket));
    const why = whyStronger(medicineId, packet, { perPacket: dilution.perPacket, mode: 'make-up-to' });
    if (!known && why === null) found.push(dilution);
  }
  return found.sort((a, b) => a.perPacket.value - b.perPacket.value);
}

function isSame(a: Volume, b: Volume): boolean {
  return Math.abs(a.value - b.value) < SAME_ML;
}

function whyStronger(medicineId: string, packet: Packet, recipe: Recipe): 'stronger-than-known' | null {
  const powder = packet.grossGrams.value * packet.volumePerGram.value;
  if (!(recipe.perPacket.value > (recipe.mode === 'make-up-to' ? powder : 0))) return 'stronger-than-known';
  const own = packet.activeGrams.value * (1000 / packet.madeUpToMl.value);
  const strongest = Math.max(STRONGEST[medicineId] ?? 0, own);
  // A ten-thousandth hides the binary dust of a printed strength.
  return strengthIn(packet, recipe).value > strongest * 1.0001 ? 'stronger-than-known' : null;
}

/**
 * Why a recipe is not mixed without asking, or `null`: stronger than any source dissolves it, or so far from the
 * packet's own volume that a decimal point or a unit may have slipped. Weaker than {@link WEAKEST_TIMES} is never mixed.
 */
export function whyNotDiluted(
  medicineId: string,
  packet: Packet,
  recipe: Recipe,
): 'stronger-than-known' | 'far-from-label' | 'too-weak' | null {
  const stronger = whyStronger(medicineId, packet, recipe);
  if (stronger !== null) return stronger;
  const listed = dilutionsFor(medicineId, packet).some(({ perPacket }) =>
    isSame(perPacket, recipe.perPacket),
  );
  const times = recipe.perPacket.value / packet.madeUpToMl.value;
  if (times > WEAKEST_TIMES * 1.0001) return 'too-weak';
  return listed || (times >= 0.5 && times <= 2) ? null : 'far-from-label';
}
