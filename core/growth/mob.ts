import { sum } from '../statistics/moments.ts';
import type { DailyGain } from './gain.ts';

/** How an animal grows beside those it runs with. */
export interface AgainstMob {
  /** Grams a day of the mob: the mean, which the published practice takes, and the median. */
  readonly mobMean: number;
  readonly mobMedian: number;
  /** Its gain less the mob's mean, in grams a day. */
  readonly difference: number;
  readonly standing: 'behind' | 'with-the-mob';
  /** How many others it was held against. */
  readonly others: number;
}

/** Fewer others make no mob (the kiosk's own guard; the published practice runs about 30). */
export const FEWEST_OTHERS = 5;

/**
 * Holds each gain of a mob against those of all its others, over the same days; in the order given.
 *
 * Published practice treats any that gain less than the average (Vet Times 2025); by that rule about half are behind,
 * so it is a further sign here and never decides alone. `share` is the part of the mob's mean below which an animal is
 * behind: 1 as published. `null` for fewer than 5 others, or where they do not gain.
 */
export function eachAgainstMob(mob: readonly DailyGain[], share = 1): (AgainstMob | null)[] {
  const gains = mob.map(({ value }) => value);
  const total = sum(gains);
  const sorted = Float64Array.from(gains).sort();
  const others = gains.length - 1;
  return gains.map((own) => {
    const mobMean = (total - own) / others;
    if (others < FEWEST_OTHERS || !(mobMean > 0)) return null;
    return {
      mobMean,
      mobMedian: medianWithout(sorted, own),
      difference: own - mobMean,
      standing: own < share * mobMean ? 'behind' : 'with-the-mob',
      others,
    };
  });
}

/** The median of values in rising order, one of them left out. */
function medianWithout(sorted: Float64Array, one: number): number {
  const at = sorted.indexOf(one);
  const others = sorted.length - 1;
  const value = (i: number) => sorted[i < at ? i : i + 1] ?? one;
  const half = others >> 1;
  return others % 2 === 1 ? value(half) : (value(half - 1) + value(half)) / 2;
}
