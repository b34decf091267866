import { grams, type Mass } from '../quantity/mass.ts';
import { add } from '../quantity/quantity.ts';
import { maintenanceTolerance } from '../weighing/tolerance.ts';
import {
  type CheckFindings,
  type CheckPoint,
  type CheckSpot,
  CORNERS,
  type CornerSpread,
  type SpotReading,
} from './check-record.ts';
import type { KnownWeight } from './known-weight.ts';

/** What was done in a check, to be judged. */
export interface CheckRun {
  readonly division: Mass;
  readonly weight: KnownWeight;
  readonly second: KnownWeight | null;
  readonly readings: readonly SpotReading[];
}

/** Hides binary dust where an error lies exactly at its limit. */
const DUST = 1e-9;
/** A weight known worse than a third of the tolerance cannot hold a scale to it (Handbook 44, appendix A, from memory). */
const GOOD_WEIGHT = 1 / 3;

/**
 * Judges a check: every error within the maintenance tolerance of its load, and the corners no further apart than it.
 *
 * The doubt of the weight itself widens the limit, so that a scale fails only where the scale is wrong; where that
 * doubt passes a third of the tolerance, the findings say `rough`. That each corner is held to the tolerance and
 * their range as well follows Handbook 44, 2.20, T.N.4.4, from memory.
 */
export function judgeCheck(run: CheckRun): CheckFindings {
  const points = run.readings.flatMap((reading) => {
    const load = loadAt(reading.spot, run);
    return load === null ? [] : [pointOf(reading, load, run.division)];
  });
  const corners = spreadOf(run);
  const good = points.every(isWithin) && (corners === null || corners.spread <= corners.limit + DUST);
  const tolerance = maintenanceTolerance(run.weight.mass, run.division);
  return {
    points,
    corners,
    rough: run.weight.doubt.value > GOOD_WEIGHT * tolerance.value,
    verdict: good ? 'passed' : 'failed',
  };
}

/** Whether an error is no more than it may be. */
export function isWithin(point: CheckPoint): boolean {
  return Math.abs(point.error) <= point.limit + DUST;
}

interface Load {
  readonly known: Mass;
  readonly doubt: Mass;
}

/** What stands on the scale at a spot; `null` where nothing is known of it. */
function loadAt(spot: CheckSpot, run: CheckRun): Load | null {
  const first = { known: add(bottleOf(run), run.weight.mass), doubt: run.weight.doubt };
  switch (spot) {
    case 'zero':
    case 'returned':
      return { known: grams(0), doubt: grams(0) };
    case 'bottle':
      return null;
    case 'both':
      if (run.second === null) return null;
      return { known: add(first.known, run.second.mass), doubt: add(first.doubt, run.second.doubt) };
    default:
      return first;
  }
}

function bottleOf(run: CheckRun): Mass {
  return run.readings.find(({ spot }) => spot === 'bottle')?.shown ?? grams(0);
}

function pointOf({ spot, shown }: SpotReading, { known, doubt }: Load, division: Mass): CheckPoint {
  const tolerance = maintenanceTolerance(known, division);
  return {
    spot,
    known,
    shown,
    error: (shown.value - known.value) / division.value,
    limit: (tolerance.value + doubt.value) / division.value,
  };
}

function spreadOf(run: CheckRun): CornerSpread | null {
  const isCorner = (spot: CheckSpot): boolean => CORNERS.some((corner) => corner === spot);
  const shown = run.readings.filter(({ spot }) => isCorner(spot)).map(({ shown: { value } }) => value);
  if (shown.length < CORNERS.length) return null;
  const load = add(bottleOf(run), run.weight.mass);
  return {
    spread: (Math.max(...shown) - Math.min(...shown)) / run.division.value,
    limit: maintenanceTolerance(load, run.division).value / run.division.value,
  };
}
