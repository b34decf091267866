import { grams, type Mass } from '../quantity/mass.ts';

/** What to say to the person pouring. */
export type PourAdvice = 'pour' | 'slow' | 'stop' | 'over' | 'jug-lifted';

/** Where a pour stands against its target. */
export interface PourStatus {
  readonly advice: PourAdvice;
  /** Water in the jug as the scale shows it. */
  readonly water: Mass;
  /** Share of the target in the jug: 0 empty, 1 exactly there. */
  readonly share: number;
  /** The half-width around the target in which the pour is good. */
  readonly band: Mass;
}

/** The band around the target: half a percent, or two divisions of the scale where that is wider. */
export function pourBand(target: Mass, division: Mass): Mass {
  return grams(Math.max(target.value * 0.005, 2 * division.value));
}

/** The share of the target from which to pour slowly. */
const SLOW_FROM = 0.9;

/** Guides a pour from the water on the scale now; water below minus five divisions means the jug was lifted. */
export function guidePour(water: Mass, target: Mass, division: Mass): PourStatus {
  const band = pourBand(target, division);
  const share = water.value / target.value;
  const advice = ((): PourAdvice => {
    if (water.value < -5 * division.value) return 'jug-lifted';
    if (water.value > target.value + band.value) return 'over';
    if (water.value >= target.value - band.value) return 'stop';
    return share >= SLOW_FROM ? 'slow' : 'pour';
  })();
  return { advice, water, share, band };
}
