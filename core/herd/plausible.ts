import { type Mass, massIn } from '../quantity/mass.ts';
import type { Animal, Species } from './animal.ts';

/** Why a weight is doubted. */
export type WeightDoubt = 'outside-species' | 'pounds-for-kilograms' | 'far-from-last';

/** Widest weights believed for a species, in pounds (common practice, no source; the kiosk's own guard). */
const BAND_LB: Readonly<Record<Species, readonly [number, number]>> = {
  goat: [1, 350],
  sheep: [2, 450],
  cattle: [40, 2700],
};

/** A change beyond this share of the last weight is asked about (our own guard). */
const FAR = 0.35;
/** How near a ratio must come to 2.205 or 0.454 to look like pounds read as kilograms. */
const UNIT_SLIP = 0.12;
const POUNDS_IN_KILOGRAM = 1 / 0.45359237;

/** Whether a weight should be doubted for this animal, and why; `null` where it is plausible. */
export function doubtOf(animal: Animal, weight: Mass): WeightDoubt | null {
  const [low, high] = BAND_LB[animal.species];
  const pounds = massIn(weight, 'lb');
  if (pounds < low || pounds > high) return 'outside-species';
  if (animal.lastWeight === null) return null;
  const change = weight.value / animal.lastWeight.mass.value;
  const slip = Math.min(Math.abs(change / POUNDS_IN_KILOGRAM - 1), Math.abs(change * POUNDS_IN_KILOGRAM - 1));
  if (slip <= UNIT_SLIP) return 'pounds-for-kilograms';
  return Math.abs(change - 1) > FAR ? 'far-from-last' : null;
}
