import { type TimeZone, wallClock } from '../dosing/local-time.ts';
import { DAY_MS, HOUR_MS } from '../moment.ts';

/** The parts of a day that are named, by the hour on the wall at which each begins. */
export const DAY_PARTS = { morning: 6, noon: 12, evening: 18 } as const;
/** A part of a day. */
export type DayPart = keyof typeof DAY_PARTS;

/** A day as it is said: near ones by name, others by date. `weekday` 0 is Sunday; `month` counts from 1. */
export type SpokenDay =
  | { readonly kind: 'today' }
  | { readonly kind: 'tomorrow' }
  | { readonly kind: 'weekday'; readonly weekday: number }
  | { readonly kind: 'date'; readonly day: number; readonly month: number };

/** A time as it is said: a day and the part of it that begins then. */
export interface SpokenTime {
  readonly day: SpokenDay;
  readonly part: DayPart;
}

/**
 * The first named part of a day that begins at or after an instant, as a keeper counts milkings.
 *
 * It is never earlier than the instant, so that waiting for it is always long enough. A weekday stands for the next six
 * days only: in a week its name would mean today. Times are by the wall clocks of the zone, in milliseconds since 1970.
 */
export function spokenTime(atMs: number, nowMs: number, zone: TimeZone): SpokenTime {
  const at = wallClock(atMs, zone);
  const today = Math.floor(wallClock(nowMs, zone) / DAY_MS);
  let day = Math.floor(at / DAY_MS);
  const parts = Object.entries(DAY_PARTS) as [DayPart, number][];
  const found = parts.find(([, hour]) => day * DAY_MS + hour * HOUR_MS >= at);
  if (found === undefined) day += 1;
  return { day: spokenDay(day, today), part: found?.[0] ?? 'morning' };
}

/** Days are counted from 1970 on the wall's calendar. */
function spokenDay(day: number, today: number): SpokenDay {
  const ahead = day - today;
  if (ahead === 0) return { kind: 'today' };
  if (ahead === 1) return { kind: 'tomorrow' };
  const date = new Date(day * DAY_MS);
  if (ahead > 1 && ahead < 7) return { kind: 'weekday', weekday: date.getUTCDay() };
  return { kind: 'date', day: date.getUTCDate(), month: date.getUTCMonth() + 1 };
}
