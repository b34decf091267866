import { HOUR_MS } from '../../../core/moment.ts';

/** The wall time most tests start at: 2026-05-01 09:00 UTC. */
export const NINE_OCLOCK = Date.UTC(2026, 4, 1, 9);

/** The uptime most tests start at, in milliseconds. */
export const UP = 1_000_000;

/** Wall time a number of hours before the start. */
export function hoursAgo(hours: number): number {
  return NINE_OCLOCK - hours * HOUR_MS;
}
