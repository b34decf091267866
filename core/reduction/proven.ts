import type { Species } from '../herd/animal.ts';
import type { Verdict } from './verdict.ts';

/** What a finished test told of a medicine in a species. */
export interface Proven {
  readonly testId: string;
  readonly medicineId: string;
  readonly species: Species;
  readonly verdict: Verdict;
  /** As a fraction; below 0 where more eggs came after. */
  readonly reduction: number;
  /** Milliseconds since 1970 of the last sample. */
  readonly atMs: number;
}

/** The newest test of each medicine in each species that told something: an inconclusive one takes nothing back. */
export function lastProven(tests: readonly Proven[]): Proven[] {
  const last = new Map<string, Proven>();
  for (const test of [...tests].sort((a, b) => a.atMs - b.atMs)) {
    if (test.verdict !== 'inconclusive') last.set(`${test.medicineId} ${test.species}`, test);
  }
  return [...last.values()];
}
