import type { Species } from '../herd/animal.ts';
import type { Interval } from '../statistics/interval.ts';
import { correlation, sum } from '../statistics/moments.ts';
import { type BnbChances, type BnbCounts, bnbChances, bnbLimits } from './bnb.ts';
import { type CountsRefusal, momentsOf, observedReduction, type TestCounts, whyNotCounts } from './counts.ts';
import { deltaLimits } from './delta.ts';
import { LARGEST_SHAPE, likeliestShape } from './dispersion.ts';
import { EGGS_ASKED_FOR, GUIDELINE_LEVEL } from './guideline.ts';
import {
  type HostSpread,
  onRawEggs,
  type Protocol,
  spreadOf,
  type Thresholds,
  thresholdsFor,
} from './thresholds.ts';
import { type Verdict, verdictOfChances, verdictOfLimits } from './verdict.ts';

/** The method a result was judged by. */
export type JudgedBy =
  /** A gamma fitted by the delta method. */
  | 'delta'
  /** The beta-negative-binomial, with the shape before taken from the counts. */
  | 'bnb-own-shape'
  /** The same, with published shapes, since the animals are too few to tell their own. */
  | 'bnb-published-shapes';

/** What a reduction test says. Reductions and limits are fractions; below 0 they mean more eggs after. */
export interface Judgement {
  readonly ok: true;
  readonly by: JudgedBy;
  readonly verdict: Verdict;
  readonly reduction: number;
  /** 90 % limits, not clamped. */
  readonly limits: Interval;
  /** `null` where the limits decided: by the delta method, or because the chances could not be told. */
  readonly chances: BnbChances | null;
  readonly thresholds: Thresholds;
  readonly animals: { readonly before: number; readonly after: number };
  /** Raw eggs seen. */
  readonly eggs: { readonly before: number; readonly after: number };
  /** Fewer than 5 animals: extreme care, says the guideline's own tool. */
  readonly extremeCare: boolean;
  /** Whether fewer raw eggs were seen before than the guideline asks for. */
  readonly fewEggs: boolean;
}

/** A judgement, or why there is none. */
export type JudgeResult = Judgement | { readonly ok: false; readonly why: CountsRefusal | 'too-few-eggs' };

/** Fewer animals cannot tell how unlike they are. */
const ANIMALS_FOR_OWN_SHAPE = 5;
/** Fewer animals with an egg after leave the delta method without ground. */
const ANIMALS_WITH_EGGS_FOR_DELTA = 3;
/** Two counts of an animal are never taken to agree better than this (the kiosk's own guard). */
const CLOSEST_AGREEMENT = 0.95;

/**
 * Judges a test by the 2023 guideline, by the method its statisticians' tool would choose.
 *
 * Fewer than 5 animals: beta-negative-binomial with published shapes. 5 or more, with fewer than 3 that show an egg
 * after: the same with the shape before from the counts and the published ratio of shapes. Else the delta method.
 * Source: bayescount f5fb4b1, R/fecrt_analysis.R, without the cap it lays on the covariance.
 */
export function judgeReduction(counts: TestCounts, host: Species, protocol: Protocol): JudgeResult {
  const why = whyNotCounts(counts);
  if (why !== null) return { ok: false, why };
  const thresholds = thresholdsFor(host, protocol);
  const found = routed(counts, spreadOf(host), thresholds);
  if (found === null) return { ok: false, why: 'too-few-eggs' };
  const eggs = { before: sum(counts.before), after: sum(counts.after) };
  return {
    ok: true,
    ...found,
    reduction: observedReduction(momentsOf(counts)),
    thresholds,
    animals: { before: counts.before.length, after: counts.after.length },
    eggs,
    extremeCare: fewest(counts) < ANIMALS_FOR_OWN_SHAPE,
    fewEggs: eggs.before < EGGS_ASKED_FOR,
  };
}

type Found = Pick<Judgement, 'by' | 'verdict' | 'limits' | 'chances'>;

function routed(counts: TestCounts, spread: HostSpread, thresholds: Thresholds): Found | null {
  if (fewest(counts) < ANIMALS_FOR_OWN_SHAPE) {
    const agreement = counts.design === 'paired' ? spread.correlation : 0;
    return byBnb('bnb-published-shapes', counts, thresholds, spread.shapeBefore, spread, agreement);
  }
  if (counts.after.filter((eggs) => eggs > 0).length < ANIMALS_WITH_EGGS_FOR_DELTA) {
    const own = likeliestShape(counts.before);
    return byBnb('bnb-own-shape', counts, thresholds, own, spread, agreementOf(counts));
  }
  const limits = deltaLimits(momentsOf(counts), GUIDELINE_LEVEL);
  return limits && { by: 'delta', verdict: verdictOfLimits(limits, thresholds), limits, chances: null };
}

function byBnb(
  by: JudgedBy,
  counts: TestCounts,
  thresholds: Thresholds,
  shapeBefore: number,
  { shapeBefore: publishedBefore, shapeAfter: publishedAfter }: HostSpread,
  agreement: number,
): Found | null {
  const shape = Math.min(LARGEST_SHAPE, shapeBefore / (1 - agreement));
  const eggs: BnbCounts = {
    eggsBefore: sum(counts.before),
    eggsAfter: sum(counts.after),
    animalsBefore: counts.before.length,
    animalsAfter: counts.after.length,
    shapeBefore: shape,
    shapeAfter: (shape * publishedAfter) / publishedBefore,
  };
  const { factorBefore, factorAfter } = counts;
  const raw = onRawEggs(thresholds, factorBefore, factorAfter);
  const chances = bnbChances(eggs, raw.expected, raw.lowest);
  const limits = bnbLimits(eggs, GUIDELINE_LEVEL);
  if (limits === null) return null;
  const onGrams = (rawEfficacy: number): number => 1 - ((1 - rawEfficacy) * factorAfter) / factorBefore;
  return {
    by,
    // Chances that cannot be told leave it to the limits, which then err towards telling nothing.
    verdict: chances === null ? verdictOfLimits(limits, raw) : verdictOfChances(chances),
    limits: { lower: onGrams(limits.lower), upper: onGrams(limits.upper) },
    chances,
  };
}

/** How well an animal's two counts agree; where that cannot be told none is assumed, which widens the limits. */
function agreementOf({ design, before, after }: TestCounts): number {
  const seen = design === 'paired' ? correlation(before, after) : null;
  return Math.min(CLOSEST_AGREEMENT, Math.max(0, seen ?? 0));
}

function fewest({ before, after }: TestCounts): number {
  return Math.min(before.length, after.length);
}
