import type { Mass } from '../quantity/mass.ts';
import type { Reading } from '../weighing/reading.ts';

/** What a scale on trial has said lately. Nothing is weighed or dosed from it. */
export interface Trial {
  /** The last number; `null` while there is none or the scale reports a fault. */
  readonly live: Mass | null;
  readonly division: Mass | null;
  readonly net: boolean;
  readonly fault: boolean;
  readonly samples: readonly Sample[];
}

interface Sample {
  readonly at: number;
  readonly grams: number;
  readonly stable: boolean;
}

/** A scale on trial that has said nothing. */
export const FRESH_TRIAL: Trial = { live: null, division: null, net: false, fault: false, samples: [] };

/** A scale that counts in steps wider than its decimals may flicker by one; this share of the load covers it. */
const FLICKER = 0.003;
/** How long a number must stand still to be compared, in milliseconds. */
const REST_MS = 1500;

/** Takes one reading into the trial; a fault, or a switch between gross and net, starts it over. */
export function feedTrial(trial: Trial, reading: Reading): Trial {
  const { division, net } = reading;
  if (reading.fault !== undefined) return { ...FRESH_TRIAL, division, net, fault: true };
  const earlier = net === trial.net ? trial.samples : [];
  const sample = { at: reading.at, grams: reading.mass.value, stable: reading.stability === 'stable' };
  const samples = [...earlier.filter(({ at }) => reading.at - at <= 2 * REST_MS), sample];
  return { live: reading.mass, division, net, fault: false, samples };
}

/** What a trial comes to now. */
export interface Rest {
  /** Whether the number stands still, by the numbers alone. */
  readonly still: boolean;
  /** Whether the number stands still while the scale says all the time that it moves: its motion mark is read wrongly. */
  readonly neverStill: boolean;
}

/** Whether the number stood still for 1.5 s, whatever the scale says of itself. */
export function restOf(trial: Trial): Rest {
  const { samples, division } = trial;
  const last = samples.at(-1);
  const first = samples[0];
  const tooShort = last === undefined || first === undefined || last.at - first.at < REST_MS;
  if (tooShort || division === null) return { still: false, neverStill: false };
  const window = samples.filter(({ at }) => last.at - at <= REST_MS);
  const values = window.map(({ grams }) => grams);
  const slack = Math.max(1.5 * division.value, FLICKER * Math.abs(last.grams));
  const still = window.length >= 3 && Math.max(...values) - Math.min(...values) <= slack;
  return { still, neverStill: still && window.every(({ stable }) => !stable) };
}
