import type { Mass } from '../quantity/mass.ts';

/** What to say to the person pouring. */
export type PourAdvice = 'pour' | 'slow' | 'stop' | 'over';

/** Where a pour stands against its target. */
export interface PourStatus {
  readonly advice: PourAdvice;
  /** Share of the target in the jug: 0 empty, 1 exactly there. */
  readonly share: number;
}

/** The share of the target from which to pour slowly. */
const SLOW_FROM = 0.9;

/** Guides a pour from the water on the scale now; it is good within the band around the target. */
export function guidePour(water: Mass, target: Mass, band: Mass): PourStatus {
  const share = water.value / target.value;
  const advice = ((): PourAdvice => {
    if (water.value > target.value + band.value) return 'over';
    if (water.value >= target.value - band.value) return 'stop';
    return share >= SLOW_FROM ? 'slow' : 'pour';
  })();
  return { advice, share };
}
