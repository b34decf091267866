import { grams, type Mass } from '../quantity/mass.ts';
import { scaleUncertainty } from './reading.ts';

/** One usable platform reading while an animal stands on it. */
export interface Sample {
  /** Uptime in milliseconds. */
  readonly at: number;
  readonly grams: number;
  readonly stable: boolean;
}

/** A weight that was held: the estimate, its standard uncertainty (k = 1) and when. */
export interface Held {
  readonly mass: Mass;
  readonly uncertainty: Mass;
  /** Uptime in milliseconds. */
  readonly at: number;
  /** The weight held just before in the same visit, when this one clearly differs from it. */
  readonly changedFrom: Mass | null;
}

/** Window lengths tried, shortest first: a calm animal is held soon, a restless one later. */
const WINDOWS_MS = [1200, 2400, 4500, 6400] as const;
/** A hold wants at least this many readings, so that a slow scale is not believed on two of them. */
const MIN_SAMPLES = 6;
/** Animal motion is slower than the sampling, so means over blocks of the window are compared, not single readings. */
const BLOCKS = 4;
/** The motion's share of the standard uncertainty that is small enough to hold, of the weight. */
const GOOD_ENOUGH = 0.005;
/** Two holds of one visit differ when they are further apart than this share and four uncertainties. */
const CHANGED = 0.03;

/**
 * Looks for a weight that can be held in the readings since step-on.
 *
 * A later hold replaces an earlier one only where the two clearly differ (one foot was off, a second animal came),
 * and then says what it replaced. Returns the earlier hold where nothing better is found, `null` where there is none.
 */
export function settle(samples: readonly Sample[], division: Mass, earlier: Held | null): Held | null {
  const found = bestWindow(samples, division);
  if (found === null || earlier === null) return found ?? earlier;
  const apart = Math.abs(found.mass.value - earlier.mass.value);
  const differs = apart > CHANGED * earlier.mass.value && apart > 4 * found.uncertainty.value;
  return differs ? { ...found, changedFrom: earlier.mass } : earlier;
}

function bestWindow(samples: readonly Sample[], division: Mass): Held | null {
  const last = samples.at(-1);
  const first = samples[0];
  if (last === undefined || first === undefined) return null;
  for (const length of WINDOWS_MS) {
    // One sample gap of slack: at 4 Hz a window of 1.2 s holds readings 1.0 s apart.
    if (last.at - first.at < length - 260) return null;
    const window = samples.filter((sample) => last.at - sample.at <= length);
    const held = tryWindow(window, division);
    if (held !== null) return { ...held, at: last.at };
  }
  return null;
}

function tryWindow(window: readonly Sample[], division: Mass): Omit<Held, 'at'> | null {
  if (window.length < MIN_SAMPLES) return null;
  const estimate = trimmedMean(window.map((sample) => sample.grams));
  const motion = standardErrorOfBlocks(window);
  const still = window.every(
    (sample) => sample.stable && Math.abs(sample.grams - estimate) <= division.value,
  );
  if (!still && motion > Math.max(GOOD_ENOUGH * estimate, division.value / 2)) return null;
  const scale = scaleUncertainty(grams(estimate), division);
  return {
    mass: grams(estimate),
    uncertainty: grams(Math.hypot(scale.value, motion)),
    changedFrom: null,
  };
}

/** The mean without the highest and lowest fifth: one stamp of a foot does not move it. */
function trimmedMean(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const cut = Math.floor(sorted.length / 5);
  const kept = sorted.slice(cut, sorted.length - cut);
  return mean(kept);
}

/** The standard error of the window's mean from the spread of its block means. */
function standardErrorOfBlocks(window: readonly Sample[]): number {
  const size = window.length / BLOCKS;
  const means: number[] = [];
  for (let block = 0; block < BLOCKS; block += 1) {
    const part = window.slice(Math.round(block * size), Math.round((block + 1) * size));
    if (part.length > 0) means.push(mean(part.map((sample) => sample.grams)));
  }
  const centre = mean(means);
  const variance = means.reduce((sum, m) => sum + (m - centre) ** 2, 0) / (means.length - 1);
  return Math.sqrt(variance / means.length);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
