import { DAY_MS } from '../moment.ts';
import type { ScaleCheckRecord } from './check-record.ts';

/** What is known of a scale's checks, and how often it should be checked. */
export interface ScaleChecking {
  /** The last check that was finished; `null` where there was none. */
  readonly last: Pick<ScaleCheckRecord, 'verdict' | 'atMs' | 'clockTrusted'> | null;
  /** How many days a passed check is good for. */
  readonly everyDays: number;
  /** Whether a failed or long overdue check stops a dose instead of asking. */
  readonly stops: boolean;
}

/** Where a scale stands with its checks. `undated` passed, but under a clock that was not trusted. */
export type CheckStanding = 'never' | 'fresh' | 'undated' | 'due' | 'overdue' | 'failed';

/** How many days a passed check is good for unless set otherwise: our own guard, no source gives one for a farm. */
export const USUAL_CHECK_DAYS = 30;

/** Where a scale stands with its checks; beyond twice its days a check is overdue. */
export function checkStanding(
  { last, everyDays }: ScaleChecking,
  wallMs: number,
  clockTrusted: boolean,
): CheckStanding {
  if (last === null) return 'never';
  if (last.verdict === 'failed') return 'failed';
  if (!last.clockTrusted) return 'undated';
  // Without a clock the age is not known; that every dose then asks is the clock's own caution.
  if (!clockTrusted) return 'fresh';
  const days = Math.max(0, wallMs - last.atMs) / DAY_MS;
  if (days <= everyDays) return 'fresh';
  return days <= 2 * everyDays ? 'due' : 'overdue';
}
