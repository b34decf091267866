/** Which way a value between two marks goes; `nearest` takes the upper mark of an exact tie. */
export type Rounding = 'nearest' | 'down' | 'up';

/** How far from a mark, in steps, a value still counts as on it: hides binary dust such as 0.1 + 0.2. */
const ON_THE_MARK = 1e-9;

/**
 * The number of whole steps nearest to, at or below, or at or above a value.
 *
 * `step` must be above zero, else `RangeError`.
 */
export function stepsIn(value: number, step: number, rounding: Rounding): number {
  if (!(step > 0)) throw new RangeError(`a step must be above zero, not ${step}`);
  const steps = value / step;
  switch (rounding) {
    case 'nearest':
      return Math.floor(steps + 0.5 + ON_THE_MARK);
    case 'down':
      return Math.floor(steps + ON_THE_MARK);
    case 'up':
      return Math.ceil(steps - ON_THE_MARK);
  }
}

/** The decimal places that show every multiple of a step exactly: 0.1 needs 1, 0.25 needs 2, 5 needs 0; at most 6. */
export function decimalsOf(step: number): number {
  for (let decimals = 0; decimals < 6; decimals += 1) {
    const scaled = step * 10 ** decimals;
    if (Math.abs(scaled - Math.round(scaled)) < ON_THE_MARK * 10 ** decimals) return decimals;
  }
  return 6;
}

/** A whole number of steps as a clean decimal: 33 steps of 0.1 are 3.3, not 3.3000000000000003. */
export function fromSteps(steps: number, step: number): number {
  return Number((steps * step).toFixed(decimalsOf(step)));
}
