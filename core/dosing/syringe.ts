import { millilitres, type Volume } from '../quantity/volume.ts';
import { type MeasuredSyringe, measuredTolerance } from './measured-syringe.ts';

/** A syringe or drenching syringe on the shelf. */
export interface Syringe {
  readonly id: string;
  /** What the keeper calls it, such as "6 mL syringe". */
  readonly name: string;
  readonly capacity: Volume;
  /** The step between two marks. */
  readonly graduation: Volume;
  /** What its last check by weighing found; `null` where it was never checked. */
  readonly measured: MeasuredSyringe | null;
}

/**
 * Syringes a keeper can pick from. The 3 mL by 0.1 and the 10 mL by 0.2 marks are those printed in a teaching
 * table; the others are common practice, no source: the keeper picks the picture that looks like the one in hand.
 */
export const SYRINGE_CATALOGUE: readonly Syringe[] = [
  syringe(1, 0.01),
  syringe(3, 0.1),
  syringe(6, 0.1),
  syringe(6, 0.2),
  syringe(10, 0.2),
  syringe(12, 0.2),
  syringe(20, 1),
  syringe(35, 1),
  syringe(60, 1),
];

function syringe(capacity: number, graduation: number): Syringe {
  return {
    id: `syringe-${capacity}-by-${graduation}`,
    name: `${capacity} mL syringe`,
    capacity: millilitres(capacity),
    graduation: millilitres(graduation),
    measured: null,
  };
}

/** The syringe of an id, or `undefined`. */
export function syringeById(id: string): Syringe | undefined {
  return SYRINGE_CATALOGUE.find((candidate) => candidate.id === id);
}

/**
 * The most a new syringe may deliver off its mark, either way.
 *
 * ISO 7886-1 tolerance on graduated capacity: below half the capacity 1.5 % of it and a share of what is expelled,
 * from half upwards a share of what is expelled alone. The 1 mL and 10 mL rules were read in a worked example; the
 * other sizes follow the standard's table from memory and are used as an estimate of doubt, never as a dose.
 */
export function syringeTolerance(syringe: Syringe, expelled: Volume): Volume {
  const capacity = syringe.capacity.value;
  const small = capacity < 5;
  if (expelled.value < capacity / 2) {
    return millilitres(0.015 * capacity + (small ? 0.02 : 0.01) * expelled.value);
  }
  return millilitres((small ? 0.05 : 0.04) * expelled.value);
}

/** How far a draw may be off its mark, either way: what was measured, else what its standard allows. */
export function drawTolerance(syringe: Syringe, expelled: Volume): Volume {
  return syringe.measured === null
    ? syringeTolerance(syringe, expelled)
    : measuredTolerance(syringe.measured, expelled);
}
