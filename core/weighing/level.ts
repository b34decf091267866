import type { Block } from './blocks.ts';
import { type Centre, findCentre } from './centre.ts';
import { type Past, pastOf } from './past.ts';
import { type Stretch, stretchOf } from './stretch.ts';

/** What an animal seems to weigh at this instant. */
export interface Level {
  readonly grams: number;
  /** Standard uncertainty in grams (k = 1) from motion and rounding, without the scale's own error. */
  readonly uncertainty: number;
  /** Seconds of quiet standing it rests on. */
  readonly quiet: number;
  /** The share of the last second that was spent at this level. */
  readonly present: number;
  /** How fast the load climbed in the last second while it counted as this level, in grams a second; falling is below zero. */
  readonly slope: number;
  readonly past: Past;
}

/** A moment of less weight than this, in seconds, says nothing of how rough the level usually is. */
const COUNTS = 0.02;
/** A load of this few blocks has no level yet. */
const FEWEST = 3;
/** Weight is shifted with a correlation time of about so many seconds. Assumed: shifting at 0.3 to 1 Hz (facts of the trade). */
const CORRELATION = 0.3;
/**
 * Before a level has been watched for long its variance is taken as at least this share of the weight, or so many
 * times the usual change from block to block: whoever fidgets fast sways slowly too. It counts as so many
 * independent looks. Tuned on the bench's tuning set.
 */
const SWAY = 0.0025;
const SWAY_OF_ROUGHNESS = 2.5;
const SWAY_LOOKS = 0.7;
/** Time left out of the standing adds doubt, by its square. Tuned likewise. */
const LEFT_OUT = 2;
/**
 * The doubt that motion usually leaves, as a share of the weight. A spread seen for a second or two tells little of the
 * true one, so what it makes of the doubt is drawn half the way (by its logarithm) to the usual. Tuned likewise.
 */
const USUAL_DOUBT = 0.004;
/** A load that still climbs goes on for about so many seconds, less and less after it has come near. */
const CLIMBS_ON = 0.15;
const CLIMB_FADES = 1.4;

/** Finds the present level in the blocks since the step-on; `null` where there is none to speak of. */
export function findLevel(blocks: readonly Block[], divisionGrams: number): Level | null {
  if (blocks.length < FEWEST) return null;
  const stretch = stretchOf(blocks);
  const centre = findCentre(stretch, divisionGrams);
  if (centre === null) return null;
  const past = pastOf(stretch, centre);
  const rounding = divisionGrams ** 2 / 12 / Math.min(blocks.length, 4);
  const slope = slopeOf(stretch, centre);
  const climbing = CLIMBS_ON * Math.abs(slope) * Math.exp(-Math.max(0, past.sinceApart - 0.5) / CLIMB_FADES);
  return {
    grams: centre.grams,
    uncertainty: Math.sqrt(shrunk(motionOf(stretch, centre, past), centre.grams) + climbing ** 2 + rounding),
    quiet: centre.total,
    present: presentShare(stretch, centre),
    slope,
    past,
  };
}

/**
 * The variance of the level's mean under motion that is correlated in time, in grams squared.
 *
 * The spread seen is joined with what is believed of sway beforehand, each by its number of independent looks:
 * in a second or two a sway shows only a part of itself.
 */
function motionOf(stretch: Stretch, centre: Centre, past: Past): number {
  const looks = Math.max(0.3, centre.total / (2 * CORRELATION));
  const sway = Math.max(SWAY * centre.grams, SWAY_OF_ROUGHNESS * Math.sqrt(usualRoughness(stretch, centre)));
  const variance = (looks * centre.variance + SWAY_LOOKS * sway ** 2) / Math.max(0.5, looks - 1 + SWAY_LOOKS);
  const leftOut = Math.max(0, 1 - centre.total / past.stood);
  return (variance / looks) * (1 + LEFT_OUT * leftOut ** 2);
}

/** A variance drawn half the way to the usual one, both in grams squared. */
function shrunk(variance: number, grams: number): number {
  return Math.sqrt(variance) * USUAL_DOUBT * grams;
}

/** The middle roughness of the moments that count, in grams squared. */
function usualRoughness({ count, roughness }: Stretch, { weights }: Centre): number {
  const counted = new Float64Array(count);
  let found = 0;
  for (let i = 0; i < count; i += 1) {
    if ((weights[i] ?? 0) <= COUNTS) continue;
    counted[found] = roughness[i] ?? 0;
    found += 1;
  }
  return counted.subarray(0, found).sort()[Math.floor(found / 2)] ?? 0;
}

/** How fast the counted load of the last second climbs, in grams a second. */
function slopeOf({ count, at, grams: loads }: Stretch, { weights, grams }: Centre): number {
  const now = at[count - 1] ?? 0;
  let [w, wx, wxx, wy, wxy] = [0, 0, 0, 0, 0];
  for (let i = count - 1; i >= 0 && now - (at[i] ?? 0) <= 1; i -= 1) {
    const x = (at[i] ?? 0) - now;
    const y = (loads[i] ?? 0) - grams;
    const weight = weights[i] ?? 0;
    w += weight;
    wx += weight * x;
    wxx += weight * x * x;
    wy += weight * y;
    wxy += weight * x * y;
  }
  const spread = w * wxx - wx * wx;
  return spread > 1e-9 ? (w * wxy - wx * wy) / spread : 0;
}

function presentShare({ count, at, lasts }: Stretch, { weights }: Centre): number {
  const now = at[count - 1] ?? 0;
  let all = 0;
  let here = 0;
  for (let i = count - 1; i >= 0 && now - (at[i] ?? 0) < 1; i -= 1) {
    all += lasts[i] ?? 0;
    here += weights[i] ?? 0;
  }
  return all > 0 ? here / all : 0;
}
