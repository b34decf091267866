/** The stretches of days that a file can be taken of. */
export const PERIODS = ['month', 'last-month', 'quarter', 'year', 'last-year', 'all'] as const;
/** One of {@link PERIODS}. */
export type Period = (typeof PERIODS)[number];

/** What an address asks for a stretch of days, as the farm's calendar counts them; `now` is RFC 3339. */
export function periodQuery(period: Period, now: string, timeZone: string): string {
  if (period === 'all') return '';
  const [from, to] = daysOf(period, now, timeZone);
  return `?from=${from}&to=${to}`;
}

function daysOf(period: Exclude<Period, 'all'>, now: string, timeZone: string): [string, string] {
  const day = new Intl.DateTimeFormat('en-CA', { timeZone, dateStyle: 'short' }).format(new Date(now));
  const [year = 0, month = 0] = day.split('-').map(Number);
  const first = (months: number): string => iso(new Date(Date.UTC(year, month - 1 + months, 1)));
  switch (period) {
    case 'month':
      return [first(0), day];
    case 'last-month':
      return [first(-1), iso(new Date(Date.UTC(year, month - 1, 0)))];
    case 'quarter':
      return [first(-2), day];
    case 'year':
      return [`${year}-01-01`, day];
    case 'last-year':
      return [`${year - 1}-01-01`, `${year - 1}-12-31`];
  }
}

function iso(date: Date): string {
  return date.toISOString().slice(0, 10);
}
