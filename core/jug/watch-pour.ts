import { grams, type Mass } from '../quantity/mass.ts';
import { distance, subtract } from '../quantity/quantity.ts';
import type { Bench } from '../weighing/bench.ts';

/**
 * Whether the jug stands where it stood: `on`, `off` (lifted, or out of sight), or `moved`: something else than a
 * lifted jug, such as a scale that was zeroed or tared under it.
 */
export type JugPlace = 'on' | 'off' | 'moved';

/** What has been seen of the jug while water goes in. */
export interface PourWatch {
  readonly place: JugPlace;
  /** Water in the jug when it last stood there at rest. */
  readonly water: Mass;
  /** Whether the bare pan was seen to stand at zero since the jug left it. */
  readonly zeroSeen: boolean;
  /** Uptime in milliseconds since when more than nothing and less than the jug was on the pan; `null` while not. */
  readonly betweenSince: number | null;
}

/** Nothing poured yet, and the jug in its place. */
export const POUR_BEGINS: PourWatch = {
  place: 'on',
  water: grams(0),
  zeroSeen: false,
  betweenSince: null,
};

/** A jug that comes back may differ by this many divisions from what it was, or as many grams. */
const SAME = 5;
/** A bare pan may stand this many divisions off zero, or as many grams. */
const BARE = 2;
/** A jug is set down faster than this, in milliseconds; what takes longer is water poured onto a moved zero. */
const SET_DOWN_MS = 800;

/**
 * Takes one look at the bench into what is known of the jug.
 *
 * Water does not leave a jug that stands: a fall means that it was lifted or the scale was touched. It counts again
 * once it stands there as it was, or once the bare pan was seen at zero, so that whatever then comes back weighs what
 * the scale says: a jug filled at the tap is fine. A link that went away may come back with another zero.
 */
export function watchPour(before: PourWatch, bench: Bench, jug: Mass, uptimeMs: number): PourWatch {
  if (bench.live === null || bench.net) {
    return {
      ...before,
      place: before.place === 'moved' ? 'moved' : 'off',
      zeroSeen: false,
      betweenSince: null,
    };
  }
  const step = Math.max(1, bench.division?.value ?? 1);
  const same = SAME * step;
  const water = subtract(bench.live, jug);
  if (before.place === 'on') {
    if (water.value < before.water.value - same) {
      return { ...before, place: 'off', zeroSeen: false, betweenSince: null };
    }
    return bench.steady === null ? before : { ...before, water: subtract(bench.steady, jug) };
  }
  return awaitJug(lookBetween(before, bench.live, jug, step, uptimeMs), bench.steady, jug, step);
}

/** A load that lingers between nothing and the jug is no jug being set down. */
function lookBetween(before: PourWatch, live: Mass, jug: Mass, step: number, uptimeMs: number): PourWatch {
  const between = live.value > BARE * step && live.value < jug.value - SAME * step;
  if (!between) return { ...before, betweenSince: null };
  const betweenSince = before.betweenSince ?? uptimeMs;
  const lingers = uptimeMs - betweenSince > SET_DOWN_MS;
  return lingers ? { ...before, place: 'moved', zeroSeen: false, betweenSince } : { ...before, betweenSince };
}

function awaitJug(watch: PourWatch, steady: Mass | null, jug: Mass, step: number): PourWatch {
  if (steady === null) return watch;
  if (Math.abs(steady.value) <= BARE * step) return { ...watch, place: 'off', zeroSeen: true };
  const water = subtract(steady, jug);
  const asItWas = watch.place === 'off' && distance(water, watch.water).value <= SAME * step;
  const weighedAnew = watch.zeroSeen && water.value >= -SAME * step;
  if (asItWas || weighedAnew) return { place: 'on', water, zeroSeen: false, betweenSince: null };
  return { ...watch, place: 'moved', zeroSeen: false };
}
