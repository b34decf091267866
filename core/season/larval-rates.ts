/** What becomes of the barber's pole worm outside the animal at one temperature; rates a day. */
export interface LarvalRates {
  /** From egg to infective larva; each of two steps goes twice as fast. */
  readonly development: number;
  readonly eggDeath: number;
  readonly earlyDeath: number;
  /** Of infective larvae in dung, and on herbage. */
  readonly dungDeath: number;
  readonly soilDeath: number;
  /** The share of the larvae on pasture that sit on herbage, where they are eaten. */
  readonly onHerbage: number;
}

/**
 * Rates at a mean daily temperature in degrees Celsius, for Haemonchus contortus.
 *
 * Constants of GLOWORM-FL (Rose et al. 2015, Ecological Modelling 297:232-245), as its authors' script has them.
 */
export function larvalRates(celsius: number): LarvalRates {
  return {
    development: Math.min(1, Math.max(0, -0.09746 + 0.01063 * celsius)),
    eggDeath: death(celsius, -1.47135, -0.11444, 0.00327),
    earlyDeath: death(celsius, -1.823, -0.1418, 0.00405),
    dungDeath: death(celsius, -2.6308, -0.14407, 0.00463),
    soilDeath: death(celsius, -3.68423, -0.2535, 0.0074),
    onHerbage: Math.max(0, Math.exp(-5.4824 + 0.45392 * celsius - 0.01252 * celsius ** 2)),
  };
}

function death(celsius: number, a: number, b: number, c: number): number {
  return Math.min(1, Math.exp(a + b * celsius + c * celsius ** 2));
}

/** The share of eggs that become infective larvae at constant temperature, kept moist. */
export function reachInfective({ development, eggDeath, earlyDeath }: LarvalRates): number {
  const step = 2 * development;
  return (step / (step + eggDeath)) * (step / (step + earlyDeath));
}

/** Below this mean temperature, in degrees Celsius, no egg develops: where the rate above is 0. */
export const DEVELOPMENT_BASE = 0.09746 / 0.01063;
/** Degree-days above the base from egg to infective larva: 1 / 0.01063. */
export const DEGREE_DAYS_NEEDED = 1 / 0.01063;

/** Degree-days of development over days of these mean temperatures. */
export function degreeDays(celsius: readonly number[]): number {
  return celsius.reduce((total, day) => total + Math.max(0, day - DEVELOPMENT_BASE), 0);
}
