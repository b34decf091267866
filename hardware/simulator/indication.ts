import { type Mass, type MassUnit, massIn } from '../../core/quantity/mass.ts';
import { decimalsOf, fromSteps } from '../../core/quantity/round.ts';

/** The face of a scale: the unit it shows and the step it counts in. */
export interface Face {
  readonly unit: MassUnit;
  readonly division: Mass;
}

/** What a scale shows at one moment. */
export interface Indication {
  /** Whole divisions, below zero included. */
  readonly steps: number;
  readonly moving: boolean;
  /** True while a tare is taken off. */
  readonly net: boolean;
  readonly range: 'within' | 'over' | 'under';
}

/** The digits shown, without sign, with the decimals the division needs. */
export function digitsOf(indication: Indication, face: Face): string {
  const step = massIn(face.division, face.unit);
  return fromSteps(Math.abs(indication.steps), step).toFixed(decimalsOf(step));
}

/** The digits shown with their sign, to the right of so many characters. Throws `RangeError` where they are too many. */
export function fieldOf(indication: Indication, face: Face, width: number): string {
  const number = `${indication.steps < 0 ? '-' : ''}${digitsOf(indication, face)}`;
  return fitted(number, width);
}

/** A text moved to the right of its field. Throws `RangeError` where it is too long. */
export function fitted(text: string, width: number): string {
  if (text.length > width) throw new RangeError(`${text} does not fit ${width} characters`);
  return text.padStart(width);
}

/** True where the scale shows less than nothing, or hangs. */
export function isNegative({ steps, range }: Indication): boolean {
  return steps < 0 || range === 'under';
}
