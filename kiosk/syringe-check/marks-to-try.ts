import { fromSteps, stepsIn } from '../../core/quantity/round.ts';

/** Marks worth a check: near a quarter, half and three quarters of the capacity, and all of it; each once. */
export function marksToTry(capacityMl: number, graduationMl: number): number[] {
  const marks = [0.25, 0.5, 0.75, 1].map((share) =>
    fromSteps(Math.max(1, stepsIn(share * capacityMl, graduationMl, 'nearest')), graduationMl),
  );
  return [...new Set(marks)];
}
