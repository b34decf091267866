import type { ScaleCheckRecord } from '../../../core/checking/check-record.ts';
import { KNOWN_WEIGHTS } from '../../../core/checking/known-weight.ts';
import type { ScaleChecking } from '../../../core/checking/standing.ts';
import { judgeCheck } from '../../../core/checking/verdict.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { hoursAgo } from './time.ts';

/** A platform checked yesterday with 20 kg, and passed; a check is asked for every 30 days and never stops a dose. */
export const CHECKED: ScaleChecking = {
  last: { verdict: 'passed', atMs: hoursAgo(24), clockTrusted: true },
  everyDays: 30,
  stops: false,
};

/** A finished check of a 50 g platform with 20 kg that showed so many grams in the middle. */
export function makeScaleCheck(shown = 20_000, over: Partial<ScaleCheckRecord> = {}): ScaleCheckRecord {
  const weight = KNOWN_WEIGHTS.platform.find(({ id }) => id === 'kg-20');
  if (weight === undefined) throw new Error('there is no weight of 20 kg');
  const run = {
    division: grams(50),
    weight,
    second: null,
    readings: [
      { spot: 'zero' as const, shown: grams(0) },
      { spot: 'middle' as const, shown: grams(shown) },
      { spot: 'returned' as const, shown: grams(0) },
    ],
  };
  return {
    id: 'check-1',
    role: 'platform',
    ...run,
    ...judgeCheck(run),
    atMs: hoursAgo(24),
    by: 'Kim',
    clockTrusted: true,
    ...over,
  };
}
