/** Where things stand in a drawn jug, as shares of the height at the target: 1 is exactly there. */
export interface JugColumn {
  /** Top of the water; at most `top`. */
  readonly water: number;
  /** The band in which the pour may end, drawn wide far away and at its true width at the end. */
  readonly bandLow: number;
  readonly bandHigh: number;
  /** The highest share drawn. */
  readonly top: number;
}

/** How much of what is still missing is added to the half-width of the band while it is far away. */
const WIDENING = 0.14;
/** The highest share of the target that a drawn jug can hold. */
const TOP = 1.3;

/** Where things stand in the magnified last tenth of a pour, as shares of its height: 0 the bottom, 1 the top. */
export interface LastTenth {
  readonly water: number;
  readonly bandLow: number;
  readonly bandHigh: number;
}

/** The magnified part of a pour goes from this share of the target to that one. */
const NEAR_FROM = 0.9;
const NEAR_TO = 1.04;

/** The magnified last tenth of a pour, or `null` while the water has not come near it. */
export function lastTenth(nowGrams: number, targetGrams: number, bandGrams: number): LastTenth | null {
  if (nowGrams < NEAR_FROM * targetGrams) return null;
  const height = (mass: number): number => {
    const share = (mass / targetGrams - NEAR_FROM) / (NEAR_TO - NEAR_FROM);
    return Math.min(1, Math.max(0, share));
  };
  return {
    water: height(nowGrams),
    bandLow: height(targetGrams - bandGrams),
    bandHigh: height(targetGrams + bandGrams),
  };
}

/** The column of a pour; `nowGrams` below zero (a lifted jug) draws as empty. `targetGrams` must be above zero. */
export function jugColumn(nowGrams: number, targetGrams: number, bandGrams: number): JugColumn {
  const water = Math.min(TOP, Math.max(0, nowGrams / targetGrams));
  const half = bandGrams / targetGrams + WIDENING * Math.max(0, 1 - water);
  return { water, bandLow: 1 - half, bandHigh: 1 + half, top: TOP };
}
