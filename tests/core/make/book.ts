import type { DayBookEntry } from '../../../core/round/day-book.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import type { Correction, Outcome, Treatment } from '../../../core/round/treatment.ts';
import { farm, offeredRound, offerOf, storedBy } from './round.ts';

/** Anna's dose of 9.8 mL from jug 7, given just now. */
export function makeTreatment(over: Partial<Treatment> = {}, outcome: Outcome = 'whole'): Treatment {
  const offered = offeredRound();
  const give = { type: 'give', offerId: offerOf(offered).id, outcome } as const;
  const [treatment] = storedBy([reduceRound(offered, give, farm(5))]);
  if (treatment === undefined) throw new Error('giving stored nothing');
  return { ...treatment, ...over };
}

/** A correction of a treatment; `what` is all that matters to the day book. */
export function makeCorrection(what: Correction['what'], treatmentId: string, id = 'c-1'): Correction {
  return { id, treatmentId, what, atMs: 0, by: 'Kim' };
}

/** A treatment with a chain of corrections, oldest first. */
export function makeEntry(...chain: readonly Correction['what'][]): DayBookEntry {
  const treatment = makeTreatment();
  return { treatment, corrections: chain.map((what, i) => makeCorrection(what, treatment.id, `c-${i}`)) };
}
