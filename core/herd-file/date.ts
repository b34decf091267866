import { HOUR_MS } from '../moment.ts';

/** The order of day and month where a date is not written year first; `null` where nobody has said. */
export type DateOrder = 'day-first' | 'month-first' | null;

/** Why a cell is no date. */
export type DateFault = 'not-a-date' | 'date-order-not-known' | 'in-future' | 'too-long-ago';

/** Midnight UTC of the day in milliseconds since 1970, or why not; an empty cell is `null`. */
export type DateResult =
  | { readonly ok: true; readonly atMs: number | null }
  | { readonly ok: false; readonly why: DateFault };

/** No animal in a herd is older (the kiosk's own guard). */
const OLDEST_YEARS = 40;
/** Somewhere on earth it is already this much later. */
const AHEAD_MS = 14 * HOUR_MS;
const YEAR_FIRST = /^(\d{4})-(\d{2})-(\d{2})$/;
const YEAR_LAST = /^(\d{1,2})[./-](\d{1,2})[./-](\d{4})$/;

/**
 * Reads a cell that holds a day: 2026-04-30 always, 30/4/2026 or 4/30/2026 only once it is known which is meant.
 *
 * Two-digit years, months by name and days that are not in the calendar are refused. `wallMs` is now.
 */
export function dateCell(cell: string, order: DateOrder, wallMs: number): DateResult {
  const text = cell.trim();
  if (text === '' || text === '-') return { ok: true, atMs: null };
  const yearFirst = YEAR_FIRST.exec(text);
  const yearLast = YEAR_LAST.exec(text);
  if (yearFirst === null && yearLast === null) return { ok: false, why: 'not-a-date' };
  if (yearFirst === null && order === null) return { ok: false, why: 'date-order-not-known' };
  const [a, b, c] = (yearFirst ?? yearLast ?? []).slice(1).map(Number);
  const [year, month, day] = yearFirst !== null ? [a, b, c] : order === 'day-first' ? [c, b, a] : [c, a, b];
  return judged(year ?? 0, month ?? 0, day ?? 0, wallMs);
}

function judged(year: number, month: number, day: number, wallMs: number): DateResult {
  const atMs = Date.UTC(year, month - 1, day);
  const read = new Date(atMs);
  // The calendar rolls the 31st of April over into May: then it was no date.
  if (read.getUTCMonth() !== month - 1 || read.getUTCDate() !== day) return { ok: false, why: 'not-a-date' };
  if (atMs > wallMs + AHEAD_MS) return { ok: false, why: 'in-future' };
  const oldest = new Date(wallMs).getUTCFullYear() - OLDEST_YEARS;
  return year < oldest ? { ok: false, why: 'too-long-ago' } : { ok: true, atMs };
}
