import { keptIn } from '../kept-in.ts';
import { grams, type Mass, type MassUnit, massIn } from './mass.ts';
import { decimalsOf } from './round.ts';
import type { DoseRate, Strength } from './strength.ts';
import type { Volume } from './volume.ts';

/** A formatter costs far more than what it formats, and a weight is shown twenty times a second. */
const FORMATS = new Map<string, Intl.NumberFormat>();

function decimalFormat(least: number, most: number): Intl.NumberFormat {
  return keptIn(
    FORMATS,
    `${least} ${most}`,
    () =>
      new Intl.NumberFormat('en-US', {
        minimumFractionDigits: least,
        maximumFractionDigits: most,
        // A value that rounds to zero carries no minus.
        signDisplay: 'negative',
      }),
  );
}

/**
 * A number as it may stand in a dose: a zero before the point, no zero after the last digit, commas from 1,000.
 *
 * Rounded half away from zero at `maxDecimals`. These are the display rules of the ISMP list of error-prone
 * dose designations and of the Joint Commission "Do Not Use" list (2004).
 */
export function showNumber(value: number, maxDecimals: number): string {
  return decimalFormat(0, maxDecimals).format(value);
}

/** A volume that is already on a mark, such as "3.3 mL": never trailing zeros, never "cc", a space before the unit. */
export function showVolume(volume: Volume, graduation: Volume): string {
  return `${showNumber(volume.value, decimalsOf(graduation.value))} mL`;
}

/** A strength such as "49.45 mg/mL". */
export function showStrength(strength: Strength): string {
  return `${showNumber(strength.value, 2)} mg/mL`;
}

/** A dose rate such as "11.9 mg/kg". */
export function showRate(rate: DoseRate): string {
  return `${showNumber(rate.value, rate.value < 1 ? 3 : 1)} mg/kg`;
}

/** How fine an animal's weight is shown, and said, while its scale has not told its step. */
export const USUAL_DIVISION: Mass = grams(50);

/**
 * A measured weight with its scale's own decimals kept, such as "30.0 lb": a reading, unlike a dose, may show them.
 *
 * `division` is the smallest step the scale shows; in another unit the same fineness is kept.
 */
export function showWeight(mass: Mass, unit: MassUnit, division: Mass): string {
  const step = massIn(division, unit);
  const decimals = Math.max(0, Math.min(3, Math.ceil(-Math.log10(step) - 1e-9)));
  return `${decimalFormat(decimals, decimals).format(massIn(mass, unit))} ${unit}`;
}
