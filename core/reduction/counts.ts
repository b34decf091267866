import { covariance, mean, variance } from '../statistics/moments.ts';
import type { EggCount } from '../worms/egg-count.ts';

/** Whether the same animals were sampled twice, or one group is held against another. */
export type Design = 'paired' | 'unpaired';

/** The counts of a reduction test: raw eggs, never eggs per gram, each group with its factor. */
export interface TestCounts {
  readonly design: Design;
  /** Eggs seen before treatment, or in the untreated group. */
  readonly before: readonly number[];
  /** Eggs seen after treatment; of the same animals in the same order where paired. */
  readonly after: readonly number[];
  /** Eggs per gram for each egg seen, above 0. */
  readonly factorBefore: number;
  readonly factorAfter: number;
}

/** Why counts cannot be made into a test. */
export type CountsRefusal =
  | 'composite'
  | 'factors-differ'
  | 'too-few-animals'
  | 'nothing-before'
  | 'not-counts';

/** One animal's two samples; `null` where one is missing. */
export interface SamplePair {
  readonly before: EggCount | null;
  readonly after: EggCount | null;
}

/** Counts that can be judged, or why not. */
export type CountsResult =
  | { readonly ok: true; readonly counts: TestCounts; readonly dropped: number }
  | { readonly ok: false; readonly why: CountsRefusal };

/**
 * The counts of a paired test. An animal with a sample missing is left out, whichever of the two it is.
 *
 * That is sound only where samples are missing by chance: an animal left out because it had no egg before is not.
 */
export function pairedCounts(pairs: readonly SamplePair[]): CountsResult {
  const whole = pairs.filter((pair) => pair.before !== null && pair.after !== null);
  const before = whole.flatMap((pair) => pair.before ?? []);
  const after = whole.flatMap((pair) => pair.after ?? []);
  return countsOf('paired', before, after, pairs.length - whole.length);
}

/** The counts of two groups held against each other. */
export function unpairedCounts(before: readonly EggCount[], after: readonly EggCount[]): CountsResult {
  return countsOf('unpaired', before, after, 0);
}

function countsOf(
  design: Design,
  before: readonly EggCount[],
  after: readonly EggCount[],
  dropped: number,
): CountsResult {
  if ([...before, ...after].some((count) => count.animals !== 1)) return { ok: false, why: 'composite' };
  const [factorBefore, factorAfter] = [before[0]?.factor, after[0]?.factor];
  if (factorBefore === undefined || factorAfter === undefined) return { ok: false, why: 'too-few-animals' };
  const mixed =
    before.some(({ factor }) => factor !== factorBefore) ||
    after.some(({ factor }) => factor !== factorAfter);
  if (mixed) return { ok: false, why: 'factors-differ' };
  const counts: TestCounts = {
    design,
    before: before.map(({ eggs }) => eggs),
    after: after.map(({ eggs }) => eggs),
    factorBefore,
    factorAfter,
  };
  const why = whyNotCounts(counts);
  return why === null ? { ok: true, counts, dropped } : { ok: false, why };
}

/** Why counts cannot be judged, or `null` where they can: two animals a group, whole numbers, an egg before. */
export function whyNotCounts(counts: TestCounts): CountsRefusal | null {
  const { design, before, after, factorBefore, factorAfter } = counts;
  const isCount = (eggs: number): boolean => Number.isSafeInteger(eggs) && eggs >= 0;
  if (![...before, ...after].every(isCount)) return 'not-counts';
  if (![factorBefore, factorAfter].every((factor) => factor > 0 && Number.isFinite(factor)))
    return 'not-counts';
  if (design === 'paired' && before.length !== after.length) return 'not-counts';
  if (before.length < 2 || after.length < 2) return 'too-few-animals';
  return before.some((eggs) => eggs > 0) ? null : 'nothing-before';
}

/** Means and spreads of both groups in eggs per gram; `c` is 0 where the groups are not paired. */
export interface GroupMoments {
  readonly design: Design;
  readonly n1: number;
  readonly n2: number;
  readonly m1: number;
  readonly m2: number;
  readonly v1: number;
  readonly v2: number;
  readonly c: number;
}

/** The moments the limits are made of: arithmetic means, sample variances and covariance (n - 1). */
export function momentsOf({ design, before, after, factorBefore, factorAfter }: TestCounts): GroupMoments {
  const first = before.map((eggs) => eggs * factorBefore);
  const second = after.map((eggs) => eggs * factorAfter);
  return {
    design,
    n1: first.length,
    n2: second.length,
    m1: mean(first),
    m2: mean(second),
    v1: variance(first),
    v2: variance(second),
    c: design === 'paired' ? covariance(first, second) : 0,
  };
}

/** The observed reduction as a fraction: 1 less the ratio of the means. Below 0 where there is more after. */
export function observedReduction({ m1, m2 }: GroupMoments): number {
  return 1 - m2 / m1;
}
