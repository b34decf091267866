/** A day of the calendar; the month counts from 1. */
export interface Day {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** The day of an RFC 3339 time, in UTC. */
export function dayOf(at: string): Day {
  const date = new Date(at);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

/** A day as a date such as "2026-04-30". */
export function isoDay({ year, month, day }: Day): string {
  return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

function daysIn(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

/** One step along one part of a day, never past `last`; a day that a month has not becomes its last. */
export function stepped(from: Day, part: keyof Day, by: 1 | -1, last: Day): Day {
  const moved =
    part === 'day'
      ? dayOf(new Date(Date.UTC(from.year, from.month - 1, from.day + by)).toISOString())
      : withMonth(from, part === 'month' ? by : 12 * by);
  return isoDay(moved) > isoDay(last) ? last : moved;
}

function withMonth({ year, month, day }: Day, by: number): Day {
  const months = year * 12 + (month - 1) + by;
  const [y, m] = [Math.floor(months / 12), (months % 12) + 1];
  return { year: y, month: m, day: Math.min(day, daysIn(y, m)) };
}
