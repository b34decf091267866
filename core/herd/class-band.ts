import { kilograms, type Mass } from '../quantity/mass.ts';
import type { AnimalClass, Species } from './animal.ts';

/** What an animal of a class usually weighs, in kilograms from the lightest to the heaviest. */
type Band = readonly [lightest: number, heaviest: number];

/**
 * Usual weights by class, in kilograms, for planning a jug only: they weigh no animal and set no dose.
 *
 * Common practice, no source.
 */
const BANDS_KG: Readonly<Record<Species, Readonly<Record<AnimalClass, Band>>>> = {
  goat: { female: [30, 90], male: [40, 120], castrate: [30, 100], young: [4, 25] },
  sheep: { female: [40, 110], male: [50, 150], castrate: [40, 110], young: [5, 40] },
  cattle: { female: [350, 750], male: [400, 1000], castrate: [300, 700], young: [40, 250] },
};

/** The usual lightest and heaviest of a class, for an animal that was never weighed. */
export function classBand(species: Species, kind: AnimalClass): readonly [Mass, Mass] {
  const [lightest, heaviest] = BANDS_KG[species][kind];
  return [kilograms(lightest), kilograms(heaviest)];
}
