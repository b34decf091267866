/** An age in the unit a keeper says it in. */
export interface Age {
  readonly unit: 'days' | 'weeks' | 'months' | 'years';
  readonly count: number;
}

const DAY_MS = 24 * 3_600_000;

/** The age at a time (milliseconds since 1970) of an animal born at an RFC 3339 time; `null` where not known. */
export function ageAt(bornAt: string | null, nowMs: number): Age | null {
  if (bornAt === null) return null;
  const days = Math.floor((nowMs - Date.parse(bornAt)) / DAY_MS);
  if (days < 0) return null;
  if (days < 28) return { unit: 'days', count: days };
  if (days < 120) return { unit: 'weeks', count: Math.floor(days / 7) };
  if (days < 730) return { unit: 'months', count: Math.floor(days / 30.4375) };
  return { unit: 'years', count: Math.floor(days / 365.25) };
}
