import type { Draws, Range } from './draws.ts';
import { FINE_HZ, type Signal } from './signal.ts';

const EVENLY: Range = [-1, 1];

/** Adds an Ornstein-Uhlenbeck process, already under way: its standard deviation, and its correlation time. */
export function addWandering(
  draws: Draws,
  signal: Signal,
  deviation: number,
  correlationSeconds: number,
): void {
  const keep = Math.exp(-1 / (FINE_HZ * correlationSeconds));
  // Kicks are drawn evenly: a sum of so many is normal whatever they are, and even ones are quick to draw.
  const kick = deviation * Math.sqrt(3 * (1 - keep * keep));
  let value = deviation * draws.normal();
  for (let i = 0; i < signal.length; i += 1) {
    signal[i] = (signal[i] ?? 0) + value;
    value = keep * value + kick * draws.within(EVENLY);
  }
}
