import type { Withdrawal } from '../medicine/withdrawal.ts';
import { HOUR_MS } from '../moment.ts';
import { sameTimeLater, type TimeZone } from './local-time.ts';

/** When meat or milk may be used again. Unknown is never shown as zero. */
export type Clear =
  | { readonly kind: 'at'; readonly atMs: number }
  | { readonly kind: 'not-for-people' }
  | { readonly kind: 'unknown' };

/**
 * The instant a withdrawal ends for a treatment given at `givenAtMs` (milliseconds since 1970): hours counted exactly,
 * days to the same time of day in the farm's zone.
 */
export function clearAfter(withdrawal: Withdrawal, givenAtMs: number, zone: TimeZone): Clear {
  switch (withdrawal.kind) {
    case 'hours':
      return { kind: 'at', atMs: givenAtMs + withdrawal.hours * HOUR_MS };
    case 'days':
      return { kind: 'at', atMs: sameTimeLater(givenAtMs, withdrawal.days, zone) };
    case 'not-for-people':
      return { kind: 'not-for-people' };
    case 'unknown':
      return { kind: 'unknown' };
  }
}
