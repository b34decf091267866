/** The rates that must all be on the drawing, in mg/kg. */
export interface Rates {
  readonly low: number;
  readonly high: number;
  readonly target: number;
  readonly ceiling: number;
  readonly floor: number | null;
}

/**
 * Where a rate lies on a drawing so many units wide.
 *
 * The drawing runs from a little below the lowest of the rates, and at most two thirds of the target, to a little above the highest.
 */
export function intervalScale(
  { low, high, target, ceiling, floor }: Rates,
  width: number,
): (rate: number) => number {
  const lowest = Math.min(low, floor ?? low, (2 / 3) * target);
  const highest = Math.max(high, ceiling);
  const edge = 0.12 * (highest - lowest);
  const from = Math.max(0, lowest - edge);
  const span = highest + edge - from;
  return (rate) => (width * (rate - from)) / span;
}
