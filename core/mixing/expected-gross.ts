import { grams, type Mass } from '../quantity/mass.ts';
import { type Jug, remaining } from './jug.ts';

/** What a jug should weigh now, with what is left in it, and how far it may be off that and still be it. */
export interface ExpectedGross {
  readonly mass: Mass;
  readonly slack: Mass;
}

/** What one draw may lose in drips and in the nozzle, in millilitres (our own guard). */
const DRIPS = 0.3;

/**
 * What a jug should weigh: its empty mass and, of what was put into it, the share that is left.
 *
 * Water and powder were both weighed, so the mass of a millilitre of the mix is known without a density. `null` for a
 * jug whose empty mass was never learned. `uncertainty` is that of the scale now (k = 1); the slack is at k = 2.
 */
export function expectedGross(jug: Jug, uncertainty: Mass): ExpectedGross | null {
  const { weighed } = jug;
  if (weighed === null) return null;
  const perMl = weighed.contents.value / jug.volume.value;
  return {
    mass: grams(weighed.empty.value + perMl * remaining(jug).value),
    slack: grams(
      2 * Math.hypot(weighed.uncertainty.value, uncertainty.value) +
        perMl * (2 * jug.drawnDoubt.value + DRIPS * jug.draws),
    ),
  };
}
