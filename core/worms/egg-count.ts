import type { Interval } from '../statistics/interval.ts';
import { poissonInterval } from '../statistics/poisson.ts';
import { MOST_EGGS } from './egg-factor.ts';

/** Eggs seen in one sample: the raw number, with the factor it was counted at. */
export interface EggCount {
  /** Eggs counted under the microscope, before anything is multiplied: a whole number from 0. */
  readonly eggs: number;
  /** Eggs per gram for each egg seen, exact and above 0; see `eggFactor`. */
  readonly factor: number;
  /** The method in words, as it was chosen. */
  readonly method: string;
  /** Animals whose dung is in the sample: 1, or more for a composite. */
  readonly animals: number;
  /** Milliseconds since 1970 of the day the dung was taken. */
  readonly takenAtMs: number;
}

/** Why a count is refused. */
export type CountRefusal = 'not-whole' | 'negative' | 'too-many' | 'no-factor' | 'no-animals' | 'in-future';

/** Why a count cannot be kept, or `null` where it can. `wallMs` is now. */
export function whyNotCount(count: EggCount, wallMs: number): CountRefusal | null {
  if (!Number.isInteger(count.eggs)) return 'not-whole';
  if (count.eggs < 0) return 'negative';
  if (count.eggs > MOST_EGGS) return 'too-many';
  if (!(count.factor > 0 && Number.isFinite(count.factor))) return 'no-factor';
  if (!Number.isInteger(count.animals) || count.animals < 1) return 'no-animals';
  return count.takenAtMs > wallMs ? 'in-future' : null;
}

/** Eggs per gram: raw eggs times the factor, unrounded. */
export function eggsPerGram({ eggs, factor }: EggCount): number {
  return eggs * factor;
}

/**
 * Between which eggs per gram the sample lies, by the doubt of counting alone (Garwood limits times the factor).
 *
 * No egg at factor 50 is "0 to 184". How animals differ comes on top. For a composite these are limits of the mean of
 * its animals, if each gave as much dung.
 */
export function eggsPerGramInterval({ eggs, factor }: EggCount, level = 0.95): Interval {
  const { lower, upper } = poissonInterval(eggs, level);
  return { lower: lower * factor, upper: upper * factor };
}

/** What samples of a group say of its mean. */
export interface GroupMean {
  readonly eggsPerGram: number;
  /** Animals behind it, those in composites included. */
  readonly animals: number;
  /** Raw eggs behind it. */
  readonly eggs: number;
  /** Limits by counting alone. */
  readonly counting: Interval;
}

/**
 * The mean of a group from its samples, a composite weighing as many animals as are in it; `null` without samples.
 *
 * The limits hold the counting error only: a mean of few samples is "alarmingly imprecise" beyond it (Stear 2024,
 * Parasitologia 4:137); 20 animals are asked for in Australia, 10 to 20 in Argentina (scielo.edu.uy S2301-15482020000202302).
 */
export function groupMean(counts: readonly EggCount[], level = 0.95): GroupMean | null {
  const animals = counts.reduce((total, count) => total + count.animals, 0);
  if (animals === 0) return null;
  const share = (count: EggCount, value: number): number => (value * count.animals) / animals;
  const mean = counts.reduce((total, count) => total + share(count, eggsPerGram(count)), 0);
  const eggs = counts.reduce((total, count) => total + count.eggs, 0);
  // Eggs of different factors and weights are brought to one step: exact for like samples, close for unlike ones.
  const step =
    eggs > 0
      ? mean / eggs
      : counts.reduce((total, count) => total + share(count, count.factor), 0) / counts.length;
  const limits = poissonInterval(eggs, level);
  return {
    eggsPerGram: mean,
    animals,
    eggs,
    counting: { lower: limits.lower * step, upper: limits.upper * step },
  };
}
