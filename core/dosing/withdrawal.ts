import type { Withdrawal } from '../medicine/formulary.ts';
import { HOUR_MS } from '../moment.ts';

/** When meat or milk may be used again. Unknown is never shown as zero. */
export type Clear =
  | { readonly kind: 'at'; readonly atMs: number }
  | { readonly kind: 'not-for-people' }
  | { readonly kind: 'unknown' };

/** The instant a withdrawal ends for a treatment given at `givenAtMs` (milliseconds since 1970). */
export function clearAfter(withdrawal: Withdrawal, givenAtMs: number): Clear {
  switch (withdrawal.kind) {
    case 'hours':
      return { kind: 'at', atMs: givenAtMs + withdrawal.hours * HOUR_MS };
    case 'not-for-people':
      return { kind: 'not-for-people' };
    case 'unknown':
      return { kind: 'unknown' };
  }
}
