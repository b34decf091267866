import { everySetting, type Method } from './method.ts';

/** Behind this many gated readings in a row the load has truly changed, and the filter begins anew. */
const GATED_IN_A_ROW = 4;
/** A reading further off than this many standard deviations of its prediction is left out. */
const GATE = 3;

/**
 * A Kalman filter of a level that walks, with a gate on the innovation.
 *
 * Settings: the walk in shares of the weight a root second, the noise of a reading as a share, the standard
 * deviation of the level at which it is held as a share, and how long no reading may have been gated, in ms.
 */
export const KALMAN: Method = {
  name: 'Kalman, innovation gate',
  settings: everySetting(
    [0.0002, 0.0005, 0.002, 0.008],
    [0.002, 0.004, 0.01, 0.02],
    [0.001, 0.002, 0.004, 0.007],
    [500, 1000, 1500, 2000],
  ),
  watch([walk = 0, noise = 0, enough = 0, quietMs = 0], division) {
    let level = 0;
    let variance = 0;
    let last = 0;
    let quietSince = 0;
    let gated = GATED_IN_A_ROW;
    return ({ at, grams }) => {
      const readingVariance = (noise * grams) ** 2 + division ** 2 / 12;
      variance += (walk * level) ** 2 * Math.max(0, (at - last) / 1000);
      last = at;
      const innovation = grams - level;
      const expected = variance + readingVariance;
      if (innovation ** 2 > GATE ** 2 * expected || gated >= GATED_IN_A_ROW) {
        gated += 1;
        quietSince = at;
        if (gated < GATED_IN_A_ROW) return null;
        level = grams;
        variance = readingVariance;
        gated = 0;
        return null;
      }
      gated = 0;
      const gain = variance / expected;
      level += gain * innovation;
      variance *= 1 - gain;
      const known = Math.sqrt(variance) <= Math.max(enough * level, division / 4);
      return known && at - quietSince >= quietMs ? level : null;
    };
  },
};
