import type { Interval } from '../statistics/interval.ts';
import { type BnbLaw, tailsAt } from './bnb-law.ts';

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
 * `bnbChances`. The upper one is 1 where no egg was seen after. `null` as of `forecastAt`.
 */
export function bnbLimits(counts: BnbCounts, level: number): Interval | null {
  const tail = (1 - level) / 2;
  const most = leftWhere(counts, (tails) => tails.atMost > tail);
  if (most === null) return null;
  if (counts.eggsAfter === 0) return { lower: 1 - most, upper: 1 };
  const least = leftWhere(counts, (tails) => tails.atLeast <= tail);
  return least === null ? null : { lower: 1 - most, upper: 1 - least };
}

/** The share left at which a condition that holds for small shares ceases to hold. */
function leftWhere(
  counts: BnbCounts,
  holds: (tails: { atMost: number; atLeast: number }) => boolean,
): number | null {
  let [low, high] = [Math.log(LEAST_LEFT), Math.log(MOST_LEFT)];
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    const forecast = forecastAt(counts, 1 - Math.exp(middle));
    if (forecast === null) return null;
    if (holds(tailsAt(forecast.law, counts.eggsAfter))) low = middle;
    else high = middle;
  }
  return Math.exp(low);
}
