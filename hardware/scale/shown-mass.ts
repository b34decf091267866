import { grams, type Mass, type MassUnit, massFrom } from '../../core/quantity/mass.ts';

/** A mass as a scale shows it: the value and the worth of its last digit. */
export interface ShownMass {
  readonly mass: Mass;
  readonly division: Mass;
}

const DECIMAL = /^(\d{1,10})(?:\.(\d*))?$/;
const UNITS: readonly string[] = ['kg', 'g', 'lb', 'oz'] satisfies MassUnit[];

/** True for the four units of mass, written exactly so. */
export function isMassUnit(text: string): text is MassUnit {
  return UNITS.includes(text);
}

/**
 * The mass of plain digits with at most one point, such as `0012.34`, `943` or `000000.`; `null` for anything else.
 *
 * Takes no sign, blank or exponent; at most ten digits before the point. The division is the last digit shown,
 * which is finer than the true one of a scale that counts by twos or fives.
 */
export function shownMass(digits: string, negative: boolean, unit: MassUnit): ShownMass | null {
  const match = DECIMAL.exec(digits);
  if (match === null || digits.length > 12) return null;
  const decimals = match[2] ?? '';
  const perUnit = 10 ** decimals.length;
  // Counted in last digits and divided once: 1.005 kg is then 1,005 g and no dust beside it.
  const count = Number(`${match[1]}${decimals}`);
  const value = massFrom(count, unit).value / perUnit;
  return {
    mass: grams(negative && value !== 0 ? -value : value),
    division: grams(massFrom(1, unit).value / perUnit),
  };
}
