/** A month as a bottle prints it; months count from 1. */
export interface Month {
  readonly year: number;
  readonly month: number;
}

/** The month of an instant, RFC 3339. */
export function monthOf(at: string): Month {
  const date = new Date(at);
  return { year: date.getFullYear(), month: date.getMonth() + 1 };
}

/** The month that many months later. */
export function stepped({ year, month }: Month, months: number): Month {
  const all = year * 12 + (month - 1) + months;
  return { year: Math.floor(all / 12), month: (all % 12) + 1 };
}
