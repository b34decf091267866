import type { Vessel } from '../../../core/mixing/vessel.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { hoursAgo } from './time.ts';

/** Jug A of 300 g, weighed empty on a 1 g scale a hundred hours ago. */
export function makeVessel(over: Partial<Vessel> = {}): Vessel {
  return {
    id: 'vessel-a',
    letter: 'A',
    empty: grams(300),
    uncertainty: grams(0.58),
    learnedAtMs: hoursAgo(100),
    by: 'Kim',
    retiredAtMs: null,
    ...over,
  };
}
