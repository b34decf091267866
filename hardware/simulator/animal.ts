import { grams, type Mass } from '../../core/quantity/mass.ts';
import {
  type AnimalGrade,
  BURST_SECONDS,
  GAITS,
  type Gait,
  LEG_LANDS,
  LEG_MS,
  LEG_SHARES,
  WALK_MS,
} from './gait.ts';
import { between, seededRandom } from './random.ts';

/** An animal to be put on the platform. */
export interface AnimalSpec {
  readonly mass: Mass;
  readonly grade: AnimalGrade;
  /** Any integer: the same seed moves the same way. */
  readonly seed: number;
}

/** The load of one visit as a pure function of time. */
export interface Visit {
  /**
   * What the deck carries `onMs` after the first foot landed, and `leavingMs` after it began to walk off
   * (`null` while it stays). Never below zero.
   */
  loadAt(onMs: number, leavingMs: number | null): Mass;
  /** How long walking off takes, in milliseconds: after it the load is zero. */
  readonly leaveMs: number;
}

/**
 * The weight of a live animal as a deck feels it: legs land one by one, it breathes, sways, steps, and walks off.
 *
 * Motion is added to the true weight with a mean of zero, but for a foot beside the deck, which only takes away.
 */
export function createVisit(animal: AnimalSpec): Visit {
  const random = seededRandom(animal.seed);
  const gait = GAITS[animal.grade];
  const walkOnMs = between(random, ...WALK_MS);
  const walkOffMs = between(random, ...WALK_MS);
  const breath = wave(gait.breathing, random);
  const sway = wave(gait.swaying, random);
  return {
    leaveMs: walkOffMs + LEG_MS,
    loadAt(onMs, leavingMs) {
      const landed = legs(onMs, walkOnMs);
      const left = leavingMs === null ? 0 : legs(leavingMs, walkOffMs);
      const seconds = onMs / 1000;
      const motion = breath(seconds) + sway(seconds) + unrest(gait, animal.seed, seconds);
      return grams(Math.max(0, animal.mass.value * (landed - left) * (1 + motion)));
    },
  };
}

/** The share of the weight whose legs have moved, of a walk that began so long ago. */
function legs(sinceMs: number, walkMs: number): number {
  return LEG_SHARES.reduce((sum, share, leg) => {
    const moved = (sinceMs - (LEG_LANDS[leg] ?? 0) * walkMs) / LEG_MS;
    return sum + share * smooth(moved);
  }, 0);
}

/** 0 below 0, 1 above 1, and no corner between. */
function smooth(x: number): number {
  const within = Math.min(1, Math.max(0, x));
  return within * within * (3 - 2 * within);
}

function wave(of: Gait['breathing'], random: () => number): (seconds: number) => number {
  const perSecond = between(random, ...of.perSecond);
  const share = between(random, ...of.share);
  const phase = random();
  return (seconds) => share * Math.sin(2 * Math.PI * (perSecond * seconds + phase));
}

/** Steps and a foot beside the deck: each second draws its own from the seed, so that any moment can be asked for. */
function unrest(gait: Gait, seed: number, seconds: number): number {
  const second = Math.floor(seconds);
  const random = seededRandom(seed + Math.imul(second + 1, 0x85ebca6b));
  const lasts = between(random, ...BURST_SECONDS);
  const into = (seconds - second - between(random, 0, 1 - lasts)) / lasts;
  const perSecond = between(random, ...gait.stepping.perSecond);
  const steps = random() < gait.stepping.chance ? between(random, ...gait.stepping.share) : 0;
  const missing = random() < gait.footOff.chance ? between(random, ...gait.footOff.share) : 0;
  if (into < 0 || into > 1) return 0;
  // Whole cycles within the burst keep its mean at zero.
  const cycles = Math.max(1, Math.round(perSecond * lasts));
  return steps * Math.sin(2 * Math.PI * cycles * into) - missing * Math.sin(Math.PI * into);
}
