import { calendarStart, type TimeZone } from '../../core/dosing/local-time.ts';

/** What of the records is to be taken along: from the first instant on, until before the last; of one animal, or all. */
export interface Asked {
  readonly fromMs: number;
  readonly toMs: number;
  readonly animalId: string | null;
  /** The period as a file is named by it, such as "2027-01-01-to-2027-03-31" or "all". */
  readonly name: string;
}

/** The days and animal as an address names them: days as "2027-04-12", both counted in. */
export interface PeriodQuery {
  readonly from?: string;
  readonly to?: string;
  readonly animal?: string;
}

const DAY = /^(\d{4})-(\d{2})-(\d{2})$/;
/** Before and after every date that can be in a record. */
const EVER = { fromMs: -8.64e15, toMs: 8.64e15 };

/** What an address asks for, or in a sentence why it cannot be read. */
export function periodAsked(query: PeriodQuery, zone: TimeZone): Asked | { readonly why: string } {
  const from = query.from === undefined ? null : dayParts(query.from);
  const to = query.to === undefined ? null : dayParts(query.to);
  if (from === undefined) return { why: 'from is no day: write it as 2027-04-12' };
  if (to === undefined) return { why: 'to is no day: write it as 2027-04-12' };
  const fromMs = from === null ? EVER.fromMs : calendarStart(...from, zone);
  const toMs = to === null ? EVER.toMs : calendarStart(to[0], to[1], to[2] + 1, zone);
  if (fromMs >= toMs) return { why: 'from is after to' };
  const since = query.from === undefined ? '' : `from-${query.from}`;
  const until = query.to === undefined ? '' : `to-${query.to}`;
  const name = [since, until].filter(Boolean).join('-') || 'all';
  return { fromMs, toMs, animalId: query.animal ?? null, name };
}

/** Year, month and day; `undefined` for what is no day of any calendar. */
function dayParts(text: string): [number, number, number] | undefined {
  const [, year, month, day] = (DAY.exec(String(text)) ?? []).map(Number);
  if (year === undefined || month === undefined || day === undefined || year < 1970) return undefined;
  const real = new Date(Date.UTC(year, month - 1, day));
  return real.getUTCMonth() === month - 1 && real.getUTCDate() === day ? [year, month, day] : undefined;
}
