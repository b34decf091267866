import type { Interval } from '../statistics/interval.ts';
import { type BnbLaw, type Tails, tailsAt } from './bnb-law.ts';

/** Sums of raw eggs, animals in each group, and how unlike animals are: the shape of the negative binomial, above 0. */
export interface BnbCounts {
  readonly eggsBefore: number;
  readonly eggsAfter: number;
  readonly animalsBefore: number;
  readonly animalsAfter: number;
  readonly shapeBefore: number;
  readonly shapeAfter: number;
}

/** How the eggs before foretell the eggs after, if the efficacy were a given one. */
export interface BnbForecast {
  /** Mean and variance of the chance before. */
  readonly p: number;
  readonly pVariance: number;
  /** Mean and variance of the chance after. */
  readonly mean: number;
  readonly variance: number;
  readonly law: BnbLaw;
}

/**
 * The law of the eggs after at a true efficacy, a fraction below 1: the beta-negative-binomial of Denwood et al.
 *
 * The chance before is a beta variable; a series of five central moments carries it over to the chance after. `null`
 * where the counts are too few for the series to give a law.
 */
export function forecastAt(counts: BnbCounts, efficacy: number): BnbForecast | null {
  const { eggsBefore, animalsBefore, shapeBefore: k1, shapeAfter: k2 } = counts;
  const left = 1 - efficacy;
  const [a, b] = [eggsBefore, animalsBefore * k1];
  const { p, pVariance, third, fourth, fifth } = betaMoments(a, b);
  const odds = p * k1 * left;
  const whole = odds - p * k2 + k2;
  const gap = k2 - k1 * left;
  const value = odds / whole;
  const first = (k1 * k2 * left) / whole ** 2;
  const second = (2 * k1 * k2 * left * gap) / whole ** 3;
  const thirdly = (6 * k1 * k2 * left * gap ** 2) / whole ** 4;
  const fourthly = (24 * k1 * k2 * left * gap ** 3) / whole ** 5;
  const mean = value + (second * pVariance) / 2;
  const variance =
    first ** 2 * pVariance +
    first * second * third +
    (second ** 2 / 4 + (first * thirdly) / 3) * fourth +
    ((first * fourthly) / 12 + (second * thirdly) / 6) * fifth;
  const concentration = (mean * (1 - mean)) / variance - 1;
  if (!(mean > 0 && mean < 1 && concentration > 0 && Number.isFinite(concentration))) return null;
  const law = {
    shape: k2 * counts.animalsAfter,
    alpha: mean * concentration,
    beta: (1 - mean) * concentration,
  };
  return { p, pVariance, mean, variance, law };
}

/**
 * Mean, variance and the next three central moments of a beta variable, by Pearson's recurrence:
 * (a + b + n) m[n+1] = n ((1 - 2p) m[n] + p (1 - p) m[n-1]). Moments about zero would lose the digits.
 */
function betaMoments(a: number, b: number) {
  const [p, q] = [a / (a + b), b / (a + b)];
  const next = (n: number, last: number, before: number): number =>
    (n * ((q - p) * last + p * q * before)) / (a + b + n);
  const pVariance = next(1, 0, 1);
  const third = next(2, pVariance, 0);
  const fourth = next(3, third, pVariance);
  return { p, pVariance, third, fourth, fifth: next(4, fourth, third) };
}

/** Chances of the counts seen: against the expected efficacy, and against the lowest that passes. */
export interface BnbChances {
  /** Of as many eggs after or more, were the efficacy the expected one: small speaks for resistance. */
  readonly resistance: number;
  /** Of as few eggs after or fewer, were the efficacy only the lowest: small speaks for susceptibility. */
  readonly susceptibility: number;
}

/** The two chances at `expected` and `lowest`, fractions on the scale of raw eggs; `null` as of `forecastAt`. */
export function bnbChances(counts: BnbCounts, expected: number, lowest: number): BnbChances | null {
  const atExpected = forecastAt(counts, expected);
  const atLowest = forecastAt(counts, lowest);
  if (atExpected === null || atLowest === null) return null;
  const seen = 1 - counts.eggsAfter / counts.animalsAfter / (counts.eggsBefore / counts.animalsBefore);
  return {
    resistance:
      seen >= expected || counts.eggsAfter === 0 ? 1 : tailsAt(atExpected.law, counts.eggsAfter).atLeast,
    susceptibility: seen < lowest ? 1 : tailsAt(atLowest.law, counts.eggsAfter).atMost,
  };
}

/** Shares left alive that the search for the limits runs between. */
const LEAST_LEFT = 1e-9;
const MOST_LEFT = 1e4;
const HALVINGS = 80;

/**
 * Limits of the efficacy, as a fraction: those at which either chance becomes the tail, so that they agree with
 * `bnbChances`.
 *
 * Where few animals carry nearly all eggs the series gives no law for high efficacies. A limit that lies there is put on
 * the safe side: the lower one where the laws end, the upper one at 1, where it also is if no egg was seen after. `null`
 * where no efficacy has a law.
 */
export function bnbLimits(counts: BnbCounts, level: number): Interval | null {
  const tail = (1 - level) / 2;
  const most = leftWhere(counts, (tails) => tails.atMost > tail);
  if (most === null) return null;
  const least = counts.eggsAfter === 0 ? null : leftWhere(counts, (tails) => tails.atLeast <= tail);
  return { lower: 1 - most.left, upper: least === null || least.isEdge ? 1 : 1 - least.left };
}

/** The share left at which a condition ceases to hold that holds for small shares, and whether the laws end there. */
function leftWhere(
  counts: BnbCounts,
  holds: (tails: Tails) => boolean,
): { readonly left: number; readonly isEdge: boolean } | null {
  let [low, high] = [Math.log(LEAST_LEFT), Math.log(MOST_LEFT)];
  let isEdge = true;
  let hasLaw = false;
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    const forecast = forecastAt(counts, 1 - Math.exp(middle));
    hasLaw ||= forecast !== null;
    const held = forecast === null || holds(tailsAt(forecast.law, counts.eggsAfter));
    if (!held) high = middle;
    else {
      low = middle;
      isEdge = forecast === null;
    }
  }
  return hasLaw ? { left: Math.exp(high), isEdge } : null;
}
