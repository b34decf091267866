import type { Interval } from '../statistics/interval.ts';
import type { BnbChances } from './bnb.ts';
import type { Thresholds } from './thresholds.ts';

/** What the 2023 guideline calls a result; the words of the screen stand in the catalogue. */
export type Verdict = 'resistant' | 'low-resistant' | 'susceptible' | 'inconclusive';

/** The verdict from 90 % limits: the limits decide, not the reduction seen. */
export function verdictOfLimits({ lower, upper }: Interval, { expected, lowest }: Thresholds): Verdict {
  if (upper < expected) return lower < lowest ? 'resistant' : 'low-resistant';
  return lower >= lowest ? 'susceptible' : 'inconclusive';
}

/** Chances at or below this decide; it is one tail of the 90 % limits. */
const DECIDES = 0.05;

/** The verdict from the two chances of the beta-negative-binomial method. */
export function verdictOfChances({ resistance, susceptibility }: BnbChances): Verdict {
  if (resistance <= DECIDES) return susceptibility <= DECIDES ? 'low-resistant' : 'resistant';
  return susceptibility <= DECIDES ? 'susceptible' : 'inconclusive';
}
