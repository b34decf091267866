import type { Animal } from '../herd/animal.ts';
import { doubtOf, type WeightDoubt } from '../herd/plausible.ts';
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

/** A weight with what speaks against it; `null` where nothing does. */
export interface JudgedWeighing {
  readonly weighing: Weighing;
  readonly doubt: WeightDoubt | null;
}

/**
 * Marks the weights that are hard to believe, in order of time. Each is held against the last one believed before it,
 * so that one slip does not make the next good weight look bad. None is left out.
 */
export function judgeWeighings(
  animal: Pick<Animal, 'species' | 'class'>,
  weighings: readonly Weighing[],
): JudgedWeighing[] {
  let lastWeight: Animal['lastWeight'] = null;
  return [...weighings]
    .sort((a, b) => a.atMs - b.atMs)
    .map((weighing) => {
      const doubt = doubtOf({ ...animal, lastWeight }, weighing.mass, weighing.atMs);
      if (doubt === null) lastWeight = { mass: weighing.mass, atMs: weighing.atMs };
      return { weighing, doubt };
    });
}
