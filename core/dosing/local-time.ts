import { keptIn } from '../kept-in.ts';
import { DAY_MS, HOUR_MS } from '../moment.ts';

/** A zone of the IANA database, such as `Europe/Dublin`. */
export type TimeZone = string;

/** The formatter of a zone is costly to make and the same every time. */
const FORMATTERS = new Map<TimeZone, Intl.DateTimeFormat>();

/** Whether the zone is one this machine knows. */
export function isTimeZone(zone: string): boolean {
  try {
    formatterOf(zone);
    return true;
  } catch {
    return false;
  }
}

function formatterOf(zone: TimeZone): Intl.DateTimeFormat {
  return keptIn(
    FORMATTERS,
    zone,
    () =>
      new Intl.DateTimeFormat('en-US', {
        timeZone: zone,
        hourCycle: 'h23',
        year: 'numeric',
        month: 'numeric',
        day: 'numeric',
        hour: 'numeric',
        minute: 'numeric',
        second: 'numeric',
      }),
  );
}

/** What the clock on the wall shows, as if it were UTC: milliseconds since 1970. */
export function wallClock(atMs: number, zone: TimeZone): number {
  const parts = formatterOf(zone).formatToParts(atMs);
  const of = (type: Intl.DateTimeFormatPartTypes): number =>
    Number(parts.find((part) => part.type === type)?.value);
  const ms = ((atMs % 1000) + 1000) % 1000;
  return Date.UTC(of('year'), of('month') - 1, of('day'), of('hour'), of('minute'), of('second')) + ms;
}

/** The instant a wall clock shows a time; where it shows it twice or never, the later of what it may be. */
function instantOf(shown: number, zone: TimeZone): number {
  // No zone is further from UTC than 14 hours, and none changes its clock twice in two days.
  const offsets = [-26 * HOUR_MS, 26 * HOUR_MS].map((off) => wallClock(shown + off, zone) - (shown + off));
  const instants = offsets.map((offset) => shown - offset);
  const real = instants.filter((instant) => wallClock(instant, zone) === shown);
  return Math.max(...(real.length > 0 ? real : instants));
}

/** The instant that many days later at the same time of day on the clocks of a zone, over any change of them. */
export function sameTimeLater(atMs: number, days: number, zone: TimeZone): number {
  return instantOf(wallClock(atMs, zone) + days * DAY_MS, zone);
}

/** A time as the clocks of a zone show it; the month counts from 1. */
export interface ClockTime {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
}

/** The instant the clocks of a zone show a time; where they show it twice or never, the later of what it may be. */
export function clockTime({ year, month, day, hour, minute }: ClockTime, zone: TimeZone): number {
  return instantOf(Date.UTC(year, month - 1, day, hour, minute), zone);
}

/** The instant a day of the calendar begins in a zone; `month` counts from 1, and a 13th is the next year's first. */
export function calendarStart(year: number, month: number, day: number, zone: TimeZone): number {
  return instantOf(Date.UTC(year, month - 1, day), zone);
}

/** The day of the calendar that a zone's clocks show at an instant, such as "2027-04-12". */
export function calendarDay(atMs: number, zone: TimeZone): string {
  return new Date(wallClock(atMs, zone)).toISOString().slice(0, 10);
}
