import { mean, median } from '../statistics/moments.ts';
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
 * Holds a gain against those of the others in the mob, over the same days.
 *
 * Published practice treats any that gain less than the average (Vet Times 2025); by that rule about half are behind,
 * so it is a further sign here and never decides alone. `share` is the part of the mob's mean below which an animal is
 * behind: 1 as published. `null` for fewer than 5 others, or a mob that does not gain.
 */
export function againstMob(own: DailyGain, others: readonly DailyGain[], share = 1): AgainstMob | null {
  if (others.length < FEWEST_OTHERS) return null;
  const gains = others.map(({ value }) => value);
  const mobMean = mean(gains);
  if (!(mobMean > 0)) return null;
  return {
    mobMean,
    mobMedian: median(gains),
    difference: own.value - mobMean,
    standing: own.value < share * mobMean ? 'behind' : 'with-the-mob',
    others: others.length,
  };
}
