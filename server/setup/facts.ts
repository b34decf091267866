import { fitsSteps, likelySteps, type Steps, USUAL_STEPS } from '../../core/proving/steps.ts';
import type { MassUnit } from '../../core/quantity/mass.ts';
import type { SmaAbout } from '../../hardware/scale/sma-about.ts';
import type { FactsView } from '../../shared/setup.ts';

/** What a scale says of itself in the unit it shows, in grams; what it leaves open is `null`. */
export interface ToldFacts {
  readonly capacityGrams: number | null;
  readonly divisionGrams: number | null;
}

/** Of a scale that cannot be asked, or does not answer. */
export const NOTHING_TOLD: ToldFacts = { capacityGrams: null, divisionGrams: null };

/** What the ranges of one unit come to: of several the most it carries, and the widest step. */
export function toldFacts({ ranges }: SmaAbout, unit: MassUnit | null): ToldFacts {
  const own = ranges.filter((range) => range.unit === unit);
  const capacities = own.flatMap(({ capacity }) => (capacity === null ? [] : [capacity.value]));
  return {
    // Where one range leaves its capacity open, that one may be the largest.
    capacityGrams: own.length > 0 && capacities.length === own.length ? Math.max(...capacities) : null,
    divisionGrams: own.length > 0 ? Math.max(...own.map(({ division }) => division.value)) : null,
  };
}

/** The division of the scale on trial in grams and who says so; `chosen` is the keeper's word, in last digits shown. */
export function divisionOf(
  told: ToldFacts,
  steps: Steps,
  chosen: number | null,
): Pick<FactsView, 'divisionGrams' | 'by'> {
  const { lastDigit } = steps;
  if (lastDigit === null) return { divisionGrams: null, by: null };
  if (chosen !== null) {
    // A later value between two steps takes the word back.
    return fitsSteps(steps, chosen)
      ? { divisionGrams: chosen * lastDigit.value, by: 'keeper' }
      : { divisionGrams: null, by: null };
  }
  // A scale that shows wider steps than it speaks of is not believed.
  return told.divisionGrams !== null && told.divisionGrams >= 0.99 * lastDigit.value
    ? { divisionGrams: told.divisionGrams, by: 'scale' }
    : { divisionGrams: null, by: null };
}

/** All that is known of the scale on trial, for the screen. */
export function factsView(told: ToldFacts, steps: Steps, chosen: number | null): FactsView {
  const { lastDigit, values } = steps;
  return {
    capacityGrams: told.capacityGrams,
    ...divisionOf(told, steps, chosen),
    valuesSeen: values.length,
    choices:
      lastDigit === null
        ? []
        : USUAL_STEPS.map((lastDigits) => ({
            lastDigits,
            grams: lastDigits * lastDigit.value,
            fits: fitsSteps(steps, lastDigits),
            likely: lastDigits === likelySteps(steps),
          })),
  };
}
