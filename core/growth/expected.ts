import type { Animal } from '../herd/animal.ts';
import { DAY_MS } from '../moment.ts';
import { grams, kilograms, type Mass } from '../quantity/mass.ts';

/** A band of gains published for a kind of young animal, in grams a day. */
export interface GainBand {
  readonly name: string;
  readonly species: Animal['species'];
  /** The age in days up to which it is shown. */
  readonly untilDays: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/** Lambs are shown beside a band to this age: its source names none (our own guard). */
const LAMB_DAYS = 180;

/** Published bands a chart may show. They are of their own farms: the mob's own gain tells more. */
export const GAIN_BANDS: readonly GainBand[] = [
  {
    name: 'Dairy kids to 3 months',
    species: 'goat',
    untilDays: 91,
    low: 151,
    high: 227,
    source: 'A third to half a pound a day; university extension page, Goat Science',
  },
  {
    name: 'Lambs on Scottish farms',
    species: 'sheep',
    untilDays: LAMB_DAYS,
    low: 97,
    high: 189,
    source: 'McBean 2016, pubmed 26872924',
  },
];

/** Where an animal would weigh in had it gained as published from a weight of its own on. */
export interface ExpectedBand {
  readonly band: GainBand;
  readonly from: { readonly atMs: number; readonly mass: Mass };
  /** The end of the band: its last day, or the day asked for where that is before. */
  readonly toMs: number;
  readonly low: Mass;
  readonly high: Mass;
}

/**
 * The band an animal is expected in from its first weight until `untilMs` (milliseconds since 1970).
 *
 * `null` where nothing published fits: a grown animal, one whose birth is not known, or one past the age of the band.
 */
export function expectedBand(
  animal: Pick<Animal, 'species' | 'class' | 'bornAtMs'>,
  first: NonNullable<Animal['lastWeight']>,
  untilMs: number,
): ExpectedBand | null {
  const band = GAIN_BANDS.find(({ species }) => species === animal.species);
  if (band === undefined || animal.class !== 'young' || animal.bornAtMs === null) return null;
  const toMs = Math.min(untilMs, animal.bornAtMs + band.untilDays * DAY_MS);
  if (first.atMs < animal.bornAtMs || toMs <= first.atMs) return null;
  const after = (gain: number): Mass => grams(first.mass.value + (gain * (toMs - first.atMs)) / DAY_MS);
  return {
    band,
    from: { atMs: first.atMs, mass: first.mass },
    toMs,
    low: after(band.low),
    high: after(band.high),
  };
}

/** Ages, in days, between which the line below was fitted. */
const FITTED = { from: 126, to: 266 } as const;

/**
 * The weight of a Boer goat in a feedlot by its age: 0.202 kg a day less 5.241 kg (scielo.org.za S0375-15892020000400001).
 *
 * `null` outside 126 to 266 days (included), for which it was fitted.
 */
export function boerFeedlotWeight(ageMs: number): Mass | null {
  const days = ageMs / DAY_MS;
  return days >= FITTED.from && days <= FITTED.to ? kilograms(0.202 * days - 5.241) : null;
}
