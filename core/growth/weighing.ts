import type { Animal } from '../herd/animal.ts';
import { doubtOf, type WeightDoubt } from '../herd/plausible.ts';
import { HOUR_MS } from '../moment.ts';
import type { Mass } from '../quantity/mass.ts';

/** How a weight was come by. */
export type WeightMethod = 'scale' | 'girth' | 'guess' | 'imported';

/** One weight in an animal's history. It is kept whatever it is; what is doubted is marked. */
export interface Weighing {
  readonly id: string;
  readonly mass: Mass;
  /** Standard uncertainty; `null` where not known. */
  readonly uncertainty: Mass | null;
  /** Milliseconds since 1970. */
  readonly atMs: number;
  readonly method: WeightMethod;
  /**
   * Hours without feed before it; `null` where not noted. Lambs lost up to 2.4 kg in 8 hours (Semakula 2021,
   * Agriculture 11:150), which swamps a fortnight's gain.
   */
  readonly hoursOffFeed: number | null;
}

/** A person's word on a weight, given after it. */
export type WeightWord = 'true' | 'wrong';

/** A weight with what speaks against it; `null` where nothing does. */
export interface JudgedWeighing {
  readonly weighing: Weighing;
  readonly doubt: WeightDoubt | 'said-wrong' | null;
  /** What a person last said of it; `null` where nobody did. */
  readonly said: WeightWord | null;
}

/**
 * Marks the weights that are hard to believe, in order of time. Each is held against the last one believed before it,
 * so that one slip does not make the next good weight look bad. None is left out.
 *
 * A person's word by the weighing's id stands before any judgement: one said to be true is believed, however odd.
 */
export function judgeWeighings(
  animal: Pick<Animal, 'species' | 'class'>,
  weighings: readonly Weighing[],
  words: ReadonlyMap<string, WeightWord> = new Map(),
): JudgedWeighing[] {
  let lastWeight: Animal['lastWeight'] = null;
  return [...weighings]
    .sort((a, b) => a.atMs - b.atMs)
    .map((weighing) => {
      const said = words.get(weighing.id) ?? null;
      const seen = doubtOf({ ...animal, lastWeight }, weighing.mass, weighing.atMs);
      const doubt = said === null ? seen : said === 'wrong' ? 'said-wrong' : null;
      if (doubt === null) lastWeight = { mass: weighing.mass, atMs: weighing.atMs };
      return { weighing, doubt, said };
    });
}

/** The longest time off feed that is believed of a weighing, in hours (our own guard). */
export const LONGEST_OFF_FEED = 48;

/** Hours off feed at a weighing where the feed was taken away at `sinceMs`; `null` where that says nothing of it. */
export function hoursOffFeedAt(sinceMs: number | null, atMs: number): number | null {
  if (sinceMs === null || atMs < sinceMs) return null;
  const hours = (atMs - sinceMs) / HOUR_MS;
  return hours <= LONGEST_OFF_FEED ? Math.round(hours * 10) / 10 : null;
}
