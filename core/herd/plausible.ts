import { DAY_MS } from '../moment.ts';
import { type Mass, massIn } from '../quantity/mass.ts';
import type { Animal, AnimalClass, Species } from './animal.ts';

/** Why a weight is doubted. */
export type WeightDoubt = 'outside-species' | 'pounds-for-kilograms' | 'far-from-last';

/** Widest weights believed for a species, in pounds (common practice, no source; the kiosk's own guard). */
const BAND_LB: Readonly<Record<Species, readonly [number, number]>> = {
  goat: [1, 350],
  sheep: [2, 450],
  cattle: [40, 2700],
};

/**
 * The share of the last weight a change is asked about from: so much on the same day, for gut fill and a coarse
 * scale, so much more for each day since, and never more than the last (all our own guards).
 */
const FAR = {
  grown: { sameDay: 0.1, aDay: 0.005, most: 0.35 },
  young: { sameDay: 0.12, aDay: 0.012, most: 0.6 },
} as const;
/** How near a ratio must come to 2.205 or 0.454 to look like pounds read as kilograms. */
const UNIT_SLIP = 0.12;
const POUNDS_IN_KILOGRAM = 1 / 0.45359237;

/** Whether a weight should be doubted for this animal now, and why; `null` where it is plausible. */
export function doubtOf(
  animal: Pick<Animal, 'species' | 'class' | 'lastWeight'>,
  weight: Mass,
  wallMs: number,
): WeightDoubt | null {
  const [low, high] = BAND_LB[animal.species];
  const pounds = massIn(weight, 'lb');
  if (pounds < low || pounds > high) return 'outside-species';
  if (animal.lastWeight === null) return null;
  const change = weight.value / animal.lastWeight.mass.value;
  const slip = Math.min(Math.abs(change / POUNDS_IN_KILOGRAM - 1), Math.abs(change * POUNDS_IN_KILOGRAM - 1));
  if (slip <= UNIT_SLIP) return 'pounds-for-kilograms';
  return Math.abs(change - 1) > allowedChange(animal.class, wallMs - animal.lastWeight.atMs)
    ? 'far-from-last'
    : null;
}

function allowedChange(kind: AnimalClass, ageMs: number): number {
  const { sameDay, aDay, most } = kind === 'young' ? FAR.young : FAR.grown;
  // A clock set back gives an age below zero: it says nothing, so the change is judged as of the same day.
  return Math.min(most, sameDay + aDay * Math.max(0, ageMs / DAY_MS));
}
