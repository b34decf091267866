import type { VisitWeight } from './offer.ts';
import type { Round } from './state.ts';

/** A weight that no dose went by, with the animal it is of. */
export interface VisitWeighed {
  readonly animalId: string;
  readonly weight: VisitWeight;
}

/**
 * The weight of a visit that has just ended without a dose; `null` where none has.
 *
 * Only at its end is it settled whose weight it was. Where a dose was given the day book holds the weight.
 */
export function weighingEnded({ phase: before }: Round, { phase: after }: Round): VisitWeighed | null {
  if (!('visit' in before) || before.visit === null) return null;
  if (before.step === 'which-animal' || before.step === 'logged') return null;
  const { who, weight, dosed } = before.visit;
  if (who === null || weight === null || dosed) return null;
  const goesOn = 'visit' in after && after.visit?.weight?.held.at === weight.held.at;
  return goesOn ? null : { animalId: who.animalId, weight };
}
