import { BOOK_KINDS, type BookKind } from '../../shared/book-kinds.ts';

/** What the day book is narrowed to; what is left out is everything. */
export interface Narrowed {
  readonly animal?: string;
  readonly medicine?: string;
  readonly by?: string;
  /** So many times 24 hours back. */
  readonly days?: number;
  readonly kind?: BookKind;
}

/** What it can be narrowed by, in the order of the plates. */
export const NARROWINGS = ['kind', 'days', 'animal', 'medicine', 'by'] as const;
/** One of {@link NARROWINGS}. */
export type Narrowing = (typeof NARROWINGS)[number];

/** How far back the plates of days reach. */
export const DAYS_BACK = [1, 7, 30, 90, 365] as const;

const MARK = '?';
const DAY_MS = 24 * 3_600_000;

/** Reads a narrowing from the part of an address that holds it; `null` for any other part. */
export function narrowedIn(part: string | undefined): Narrowed | null {
  if (part === undefined || !part.startsWith(MARK)) return null;
  const said = new URLSearchParams(part.slice(MARK.length));
  const [animal, medicine, by, days] = ['animal', 'medicine', 'by', 'days'].map((key) => said.get(key));
  const kind = BOOK_KINDS.find((each) => each === said.get('kind'));
  return {
    ...(animal ? { animal } : {}),
    ...(medicine ? { medicine } : {}),
    ...(by ? { by } : {}),
    ...(DAYS_BACK.some((each) => String(each) === days) ? { days: Number(days) } : {}),
    ...(kind === undefined ? {} : { kind }),
  };
}

/** The part of an address that holds a narrowing. */
export function narrowedPart(narrowed: Narrowed): string {
  const said = Object.entries(narrowed).map(([key, value]) => [key, String(value)]);
  return `${MARK}${new URLSearchParams(said)}`;
}

/** The narrowing with one of its points chosen anew; `null` takes it off. */
export function narrowedBy(narrowed: Narrowed, what: Narrowing, chosen: string | null): Narrowed {
  const { [what]: _, ...others } = narrowed;
  if (chosen === null) return others;
  return narrowedIn(`${narrowedPart(others)}&${new URLSearchParams({ [what]: chosen })}`) ?? others;
}

/** What the server is asked for it; `now` is RFC 3339. */
export function bookQuery({ days, ...narrowed }: Narrowed, now: string): string {
  const said = new URLSearchParams(Object.entries(narrowed).map(([key, value]) => [key, String(value)]));
  if (days !== undefined) said.set('from', new Date(Date.parse(now) - days * DAY_MS).toISOString());
  return said.toString();
}
