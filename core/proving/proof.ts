import { grams, type Mass, type MassUnit, massFrom } from '../quantity/mass.ts';

/** What a known weight says of a scale: that all is well, that its number is in another unit, or that it is wrong. */
export type Proof =
  | { readonly verdict: 'right' }
  /** The number was taken for the unit `read` and looks as if it were in the unit `is`. */
  | { readonly verdict: 'other-unit'; readonly read: MassUnit; readonly is: MassUnit }
  | { readonly verdict: 'wrong' };

/** What a full bag or bottle may be off; the two units nearest to each other are 2.2 apart (our own guard). */
const NEAR = 0.06;
/** A load lighter than this many divisions cannot tell right from wrong. */
const FEWEST_DIVISIONS = 5;
const UNITS: readonly MassUnit[] = ['kg', 'lb', 'g', 'oz'];

/** Whether a known weight is heavy enough to prove a scale of this division; it counts from 5 divisions (included). */
export function canProve(known: Mass, division: Mass): boolean {
  return known.value >= FEWEST_DIVISIONS * division.value;
}

/**
 * Compares what a scale shows with what stands on it: within 6 % or one division, whichever is more, it is right.
 *
 * `named` is the unit the number was read in; where it is `null` every pair of units is looked at.
 */
export function proofOf(shown: Mass, known: Mass, division: Mass, named: MassUnit | null): Proof {
  if (isNear(shown, known, division)) return { verdict: 'right' };
  for (const read of named === null ? UNITS : [named]) {
    for (const is of UNITS) {
      if (is === read) continue;
      const factor = massFrom(1, is).value / massFrom(1, read).value;
      const meant = grams(shown.value * factor);
      if (isNear(meant, known, grams(division.value * factor))) return { verdict: 'other-unit', read, is };
    }
  }
  return { verdict: 'wrong' };
}

function isNear(shown: Mass, known: Mass, division: Mass): boolean {
  return Math.abs(shown.value - known.value) <= Math.max(NEAR * known.value, division.value);
}
