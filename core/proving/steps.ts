import type { Mass } from '../quantity/mass.ts';
import type { Reading } from '../weighing/reading.ts';

/** The values a scale has shown lately, as far as they tell in which steps it counts. */
export interface Steps {
  /** The worth of the last digit shown; `null` before the first value. */
  readonly lastDigit: Mass | null;
  /** The greatest common divisor of all values, in last digits; 0 while only zero was shown. */
  readonly common: number;
  /** The values themselves, in last digits, each once; the first {@link ENOUGH}. */
  readonly values: readonly number[];
}

/** Of a scale that has shown nothing. */
export const NO_STEPS: Steps = { lastDigit: null, common: 0, values: [] };

/** The steps scales count in, in last digits shown (OIML R 76-1, 4.2.2.1: 1, 2 or 5 times a power of ten). */
export const USUAL_STEPS = [1, 2, 5, 10, 20, 50, 100] as const;

/**
 * So many different values tell the step: were it half of what they have in common, one in 256 would look like this
 * (2^-8, own guard).
 */
export const ENOUGH = 8;

/** Takes one reading into what is known; a fault shows no value, and other decimals start it over. */
export function seeSteps(steps: Steps, reading: Reading): Steps {
  if (reading.fault !== undefined) return steps;
  const { division } = reading;
  const known = steps.lastDigit?.value === division.value ? steps : { ...NO_STEPS, lastDigit: division };
  const value = Math.abs(Math.round(reading.mass.value / division.value));
  if (value === 0 || (known.values.includes(value) && value % known.common === 0)) return known;
  return {
    lastDigit: division,
    common: commonOf(known.common, value),
    values:
      known.values.length < ENOUGH && !known.values.includes(value) ? [...known.values, value] : known.values,
  };
}

/** Whether every value shown lies on steps of so many last digits. */
export function fitsSteps({ common }: Steps, lastDigits: number): boolean {
  return common % lastDigits === 0;
}

/** The widest usual step on which every value lies, in last digits; `null` before enough different ones were shown. */
export function likelySteps(steps: Steps): number | null {
  if (steps.values.length < ENOUGH) return null;
  return USUAL_STEPS.findLast((lastDigits) => fitsSteps(steps, lastDigits)) ?? null;
}

function commonOf(a: number, b: number): number {
  return b === 0 ? a : commonOf(b, a % b);
}
