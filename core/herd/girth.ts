import { type Mass, pounds } from '../quantity/mass.ts';

/**
 * An animal's weight from a tape: girth in inches, squared, times length in inches, over 300, in pounds.
 *
 * Girth behind the elbows, length from the point of the shoulder to the point of the rump, both above zero, else
 * `RangeError`. For sheep, goats and cattle (Washington State Univ. Extension, Ferry County; the same form for cattle
 * in a handbook of the New Zealand Digital Library). An estimate: never a weight to dose a kid by.
 */
export function weightByTape(girthInches: number, lengthInches: number): Mass {
  if (!(girthInches > 0 && lengthInches > 0))
    throw new RangeError(`girth and length must be above zero, not ${girthInches} and ${lengthInches} in`);
  return pounds((girthInches * girthInches * lengthInches) / 300);
}
