import { grams, type Mass } from '../quantity/mass.ts';
import type { Reading, ScaleFault, ScaleSpec } from './reading.ts';
import { scaleUncertainty } from './reading.ts';

/** The bench scale under a jug: what it shows now, and the value once it has come to rest. */
export interface Bench {
  readonly live: Mass | null;
  /** The mean over the last second where every reading lay within one division; `null` while pouring. */
  readonly steady: Mass | null;
  /** The standard uncertainty of a steady value (k = 1). */
  readonly uncertainty: Mass | null;
  readonly division: Mass | null;
  /** Whether the scale itself said with the last reading that the load moves. */
  readonly moving: boolean;
  readonly net: boolean;
  readonly fault: ScaleFault | null;
  readonly samples: readonly { readonly at: number; readonly grams: number; readonly stable: boolean }[];
}

/** A bench of which nothing is known: no link, or a link that has just gone. */
export const BLANK_BENCH: Bench = {
  live: null,
  steady: null,
  uncertainty: null,
  division: null,
  moving: false,
  net: false,
  fault: null,
  samples: [],
};

/** At rest means all readings of this long within a division, none flagged as moving. */
const REST_MS = 900;

/** Takes one reading into the bench. A fault, or a switch between gross and net, starts the rest over. */
export function feedBench(bench: Bench, reading: Reading, spec: ScaleSpec): Bench {
  const division = spec.division ?? reading.division;
  const fault = reading.fault ?? (reading.mass.value > spec.capacity.value ? 'over' : null);
  if (fault !== null) return { ...BLANK_BENCH, division, fault };
  const earlier = reading.net === bench.net ? bench.samples : [];
  const sample = { at: reading.at, grams: reading.mass.value, stable: reading.stability === 'stable' };
  const samples = [...earlier.filter((s) => reading.at - s.at <= 2 * REST_MS), sample];
  const steady = restOf(samples, division);
  return {
    live: reading.mass,
    steady,
    uncertainty: steady === null ? null : scaleUncertainty(steady, division),
    division,
    moving: !sample.stable,
    net: reading.net,
    fault: null,
    samples,
  };
}

function restOf(samples: Bench['samples'], division: Mass): Mass | null {
  const last = samples.at(-1);
  const first = samples[0];
  if (last === undefined || first === undefined || last.at - first.at < REST_MS) return null;
  const window = samples.filter((sample) => last.at - sample.at <= REST_MS);
  if (window.length < 3 || window.some((sample) => !sample.stable)) return null;
  const values = window.map((sample) => sample.grams);
  const spread = Math.max(...values) - Math.min(...values);
  // Half a division of slack keeps binary dust from splitting two neighbouring displayed values.
  if (spread > 1.5 * division.value) return null;
  return grams(values.reduce((sum, value) => sum + value, 0) / values.length);
}
