import { DAY_MS } from '../moment.ts';
import { kilograms, type Mass } from '../quantity/mass.ts';

/** A band of gains published for a kind of animal, in grams a day. */
export interface GainBand {
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/** Published bands a chart may show. They are of their own farms: the mob's own gain tells more. */
export const GAIN_BANDS: readonly GainBand[] = [
  {
    name: 'Dairy kids to 3 months',
    low: 151,
    high: 227,
    source: 'A third to half a pound a day; university extension page, Goat Science',
  },
  { name: 'Lambs on Scottish farms', low: 97, high: 189, source: 'McBean 2016, pubmed 26872924' },
];

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
