/** The share of eggs left that the axis ends at: what lies beyond cannot be told apart on it. */
const LEAST_LEFT = 0.001;

/**
 * Where efficacies lie on an axis, from 0 on its left to 100 on its right.
 *
 * It counts by the eggs left, each step to the right a tenth of the one before: so 90 and 99 % stand well apart, and
 * negative efficacies, of more eggs after than before, have room on the left.
 */
export function efficacyScale(lowest: number): (efficacy: number) => number {
  const most = Math.log(Math.max(1, 1 - lowest));
  const least = Math.log(LEAST_LEFT);
  return (efficacy) => {
    const left = Math.log(Math.max(LEAST_LEFT, 1 - efficacy));
    return (100 * (most - left)) / (most - least);
  };
}

/** The widths of two bars from 0, in per cent, with the ends of their intervals, on one linear scale. */
export function barScale(highest: number): (value: number) => number {
  return (value) => (highest > 0 ? (100 * Math.min(value, highest)) / highest : 0);
}
