import { DAY_MS } from '../moment.ts';
import type { Species } from './animal.ts';
import { type HerdAnimal, isPresent } from './herd-animal.ts';

/** Days at which a young animal counts as grown; a setting of the farm (common practice, no source). */
export const GROWN_AT_DAYS: Readonly<Record<Species, number>> = { goat: 365, sheep: 365, cattle: 730 };

/** Age in whole days; `null` where birth is not known or lies ahead of the clock. */
export function ageDays({ bornAtMs }: Pick<HerdAnimal, 'bornAtMs'>, wallMs: number): number | null {
  if (bornAtMs === null || bornAtMs > wallMs) return null;
  return Math.floor((wallMs - bornAtMs) / DAY_MS);
}

/**
 * Young animals that have come of age. Their class is not changed by itself: nobody knows the sex of one entered as
 * young, and rules of dosing hang on it, so the kiosk asks.
 */
export function comeOfAge(
  animals: readonly HerdAnimal[],
  wallMs: number,
  grownAt: Readonly<Record<Species, number>> = GROWN_AT_DAYS,
): HerdAnimal[] {
  return animals.filter((animal) => {
    const days = ageDays(animal, wallMs);
    return isPresent(animal) && animal.class === 'young' && days !== null && days >= grownAt[animal.species];
  });
}
