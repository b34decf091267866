import { type Mass, massIn } from '../quantity/mass.ts';
import type { Volume } from '../quantity/volume.ts';

/** Most eggs anybody counts in one sample before diluting it (the kiosk's own guard). */
export const MOST_EGGS = 10_000;

/** How dung is made ready for counting: so much of it, made up to so much, of which so much is looked through. */
export interface CountingMethod {
  readonly name: string;
  readonly dung: Mass;
  /** Dung and flotation fluid together. */
  readonly suspension: Volume;
  /** What lies under the marked fields, all chambers together. */
  readonly counted: Volume;
}

/**
 * Eggs in a gram of dung for each egg seen, exact: suspension / (dung * counted).
 *
 * Kept unrounded, though it is printed rounded: 33.33 is shown as 33. It is also the smallest count above none, which
 * says nothing of how often eggs are missed. Throws `RangeError` unless all three are above zero and no more is
 * counted than there is. Source: McMaster calculation page, whitlock.com.au.
 */
export function eggFactor({ dung, suspension, counted }: CountingMethod): number {
  if (!(dung.value > 0 && counted.value > 0 && suspension.value >= counted.value)) {
    throw new RangeError('a counting method needs dung, and no more counted than was made up');
  }
  return suspension.value / (massIn(dung, 'g') * counted.value);
}

/**
 * The chance that a perfect count shows any egg at all at `eggsPerGram`: 1 - exp(-epg / factor).
 *
 * Real chances are lower, since eggs are lost on the way: in spiked samples a McMaster slide of factor 50 showed some
 * in 40 % at 50 epg (PMC8906068, table 5).
 */
export function chanceOfSeeing(eggsPerGram: number, factor: number): number {
  return -Math.expm1(-eggsPerGram / factor);
}
