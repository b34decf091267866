import { DAY_MS } from '../moment.ts';
import type { Species } from './animal.ts';

/** How long a species carries, in days from breeding to birth. */
export interface Gestation {
  readonly meanDays: number;
  /** The shortest and the longest believed without asking: wider than the sources, our own guard. */
  readonly shortest: number;
  readonly longest: number;
}

/**
 * Gestation by species, read in secondary sources (extension handbooks and slides quoted in print); cattle from breed
 * records (Knott 1932, J Dairy Sci 15:87; Andersen and Plum 1965). The goat's mean of 150 days is common practice, no
 * source.
 */
export const GESTATION: Readonly<Record<Species, Gestation>> = {
  sheep: { meanDays: 147, shortest: 138, longest: 159 },
  goat: { meanDays: 150, shortest: 140, longest: 160 },
  cattle: { meanDays: 283, shortest: 262, longest: 296 },
};

/** When birth is looked for after a breeding (milliseconds since 1970): first, likeliest and last day. */
export function birthWindow(
  species: Species,
  bredAtMs: number,
): { readonly firstMs: number; readonly likelyMs: number; readonly lastMs: number } {
  const { meanDays, shortest, longest } = GESTATION[species];
  return {
    firstMs: bredAtMs + shortest * DAY_MS,
    likelyMs: bredAtMs + meanDays * DAY_MS,
    lastMs: bredAtMs + longest * DAY_MS,
  };
}
