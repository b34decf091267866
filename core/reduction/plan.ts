import type { Outcome } from '../round/treatment.ts';
import type { Protocol } from './thresholds.ts';

/** Hosts the planning table was worked out for. */
export type PlannedHost = 'sheep' | 'goat';

/** How large a test should be. */
export type TestSize =
  /** So many animals, who should show so many raw eggs together before treatment. */
  | { readonly kind: 'sample'; readonly animals: number; readonly eggs: number }
  /** Too few eggs an animal for any number of animals tried: count at a smaller factor, or wait. */
  | { readonly kind: 'count-finer'; readonly eggsAnAnimal: number };

/**
 * Animals to sample by raw eggs expected from each, so that a test has an 80 % chance of telling both a medicine at
 * the lowest efficacy that passes and one at 99 %.
 *
 * Computed for this project, 400 simulated tests a cell; the guideline prints a table of its own, which was not read.
 * It agrees with the 90 eggs quoted from it. Rows: raw eggs an animal, then animals.
 */
const SIZES: Readonly<
  Record<PlannedHost, Readonly<Record<Protocol, readonly (readonly [number, number])[]>>>
> = {
  sheep: {
    clinical: [
      [8, 10],
      [15, 8],
      [40, 5],
    ],
    research: [
      [8, 20],
      [15, 12],
      [40, 8],
    ],
  },
  goat: {
    clinical: [
      [8, 8],
      [15, 5],
      [40, 5],
    ],
    research: [
      [8, 20],
      [15, 10],
      [40, 5],
    ],
  },
};

/** The fewest raw eggs an animal the table was worked out for. */
export const FEWEST_EGGS_AN_ANIMAL = 8;

/** How many animals a test needs where each is expected to show this many raw eggs; between rows the lower counts. */
export function testSize(host: PlannedHost, protocol: Protocol, eggsAnAnimal: number): TestSize {
  const row = SIZES[host][protocol].findLast(([eggs]) => eggs <= eggsAnAnimal);
  if (row === undefined) return { kind: 'count-finer', eggsAnAnimal: FEWEST_EGGS_AN_ANIMAL };
  return { kind: 'sample', animals: row[1], eggs: row[0] * row[1] };
}

/** An animal that could be sampled: what it had in this round, and the raw eggs it last showed. */
export interface Candidate {
  readonly animalId: string;
  readonly outcome: Outcome;
  /** Whether it was weighed on a scale for the dose. */
  readonly weighed: boolean;
  /** `null` where it was never counted. */
  readonly lastEggs: number | null;
}

/**
 * Whom to sample: of those that were weighed and kept the whole dose down, those with most eggs last time first, then
 * those never counted. An animal known to have shown none comes last, since it can show no fall.
 */
export function whomToSample(candidates: readonly Candidate[], animals: number): string[] {
  const rank = ({ lastEggs }: Candidate): number => lastEggs ?? 0.5;
  return candidates
    .filter(({ outcome, weighed }) => outcome === 'whole' && weighed)
    .sort((a, b) => rank(b) - rank(a) || a.animalId.localeCompare(b.animalId))
    .slice(0, animals)
    .map(({ animalId }) => animalId);
}
