import { sameMix, samePercent, sameRate } from './printed.ts';

/**
 * Why two figures of one label cannot both be right, in a sentence for the person who enters them, or `null` where they
 * agree. The schemas refuse with these sentences and the keypad shows them, so that both say the same.
 */
type Contradiction = string | null;

/** A rate printed in mg/kg and in mg/lb. */
export function ratesDisagree(mgPerKg: number, mgPerLb: number): Contradiction {
  return sameRate(mgPerKg, mgPerLb)
    ? null
    : 'the two rates disagree: one in mg/lb is 0.454 times the one in mg/kg for the same dose';
}

/** A strength printed in mg/mL and in percent. */
export function strengthsDisagree(mgPerMl: number, percent: number): Contradiction {
  return samePercent(mgPerMl, percent)
    ? null
    : 'the percentage is not the strength in mg/mL: 10 mg/mL are 1 %';
}

/** The active in a packet and all of its powder, in grams. */
export function activeTooHeavy(activeGrams: number, grossGrams: number): Contradiction {
  return activeGrams < grossGrams
    ? null
    : 'the active weighs less than the whole powder: is the gross mass in its place?';
}

/** The strength printed for a mix, its active in grams and its volume in mL. */
export function mixDisagrees(activeGrams: number, ml: number, mgPerMl: number): Contradiction {
  return sameMix(activeGrams, ml, mgPerMl)
    ? null
    : 'active over volume is not the strength printed: wrong volume, or gross mass?';
}

/** A ceiling and a target in mg/kg. */
export function ceilingTooLow(ceiling: number, target: number): Contradiction {
  return ceiling > target ? null : 'the ceiling lies above the target';
}

/** A floor and a target in mg/kg. */
export function floorTooHigh(floor: number, target: number): Contradiction {
  return floor < target ? null : 'the floor lies below the target';
}

/** A withdrawal of no hours or no days at all: no source read says so without another that contradicts it. */
export function keepsNothingBack(count: number): Contradiction {
  return count > 0 ? null : 'a withdrawal is never nothing: give its time, or unknown';
}
