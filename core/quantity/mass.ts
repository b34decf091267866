import { type Quantity, quantity } from './quantity.ts';

/** A mass in grams, the one unit masses are kept and sent in. */
export type Mass = Quantity<'g'>;

/** The units a scale or a keeper may use for a mass. */
export type MassUnit = 'g' | 'kg' | 'lb' | 'oz';

/**
 * Grams in one of each unit, all exact.
 *
 * The pound is 0.45359237 kg and the ounce a sixteenth of it: Weights and Measures Act 1985 (UK),
 * Schedule 1 Part V, as at 1991-02-01.
 */
const GRAMS_PER: Readonly<Record<MassUnit, number>> = { g: 1, kg: 1000, lb: 453.59237, oz: 28.349523125 };

/** A mass from a number in the unit named. */
export function massFrom(value: number, unit: MassUnit): Mass {
  return quantity('g', value * GRAMS_PER[unit]);
}

/** The number of the unit named that a mass amounts to, unrounded. */
export function massIn(mass: Mass, unit: MassUnit): number {
  return mass.value / GRAMS_PER[unit];
}

/** A mass in grams. */
export function grams(value: number): Mass {
  return massFrom(value, 'g');
}

/** A mass given in kilograms. */
export function kilograms(value: number): Mass {
  return massFrom(value, 'kg');
}

/** A mass given in pounds avoirdupois. */
export function pounds(value: number): Mass {
  return massFrom(value, 'lb');
}

/** A mass given in ounces avoirdupois. */
export function ounces(value: number): Mass {
  return massFrom(value, 'oz');
}
