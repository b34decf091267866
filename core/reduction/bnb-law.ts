import { logGamma } from '../statistics/quantiles.ts';

/** A negative binomial count whose chance is itself a beta variable. All three are above 0. */
export interface BnbLaw {
  readonly shape: number;
  readonly alpha: number;
  readonly beta: number;
}

/** Chances of at most, and of at least, a number of eggs. */
export interface Tails {
  readonly atMost: number;
  readonly atLeast: number;
}

/** From here on 1 less the lower tail keeps too few digits of the upper one. */
const NEARLY_ALL = 0.99;
const LONGEST_TAIL = 200_000;

/** Both tails at a whole number of eggs, that number included in each. */
export function tailsAt(law: BnbLaw, eggs: number): Tails {
  const { shape, alpha, beta } = law;
  let chance = chanceOfNone(law);
  let below = 0;
  for (let x = 0; x < eggs; x += 1) {
    below += chance;
    chance *= stepUp(shape, alpha, beta, x);
  }
  const atLeast = below < NEARLY_ALL ? 1 - below : upperTail(law, chance, eggs);
  return { atMost: Math.min(1, below + chance), atLeast };
}

function upperTail({ shape, alpha, beta }: BnbLaw, first: number, from: number): number {
  let [chance, total] = [first, first];
  for (let x = from; x < from + LONGEST_TAIL && chance > total * Number.EPSILON; x += 1) {
    chance *= stepUp(shape, alpha, beta, x);
    total += chance;
  }
  return total;
}

/** The chance of one egg more over the chance of `x`. */
function stepUp(shape: number, alpha: number, beta: number, x: number): number {
  return ((shape + x) * (alpha + x)) / ((x + 1) * (beta + shape + alpha + x));
}

function chanceOfNone({ shape, alpha, beta }: BnbLaw): number {
  return Math.exp(
    logGamma(beta + shape) - logGamma(beta) + logGamma(alpha + beta) - logGamma(alpha + beta + shape),
  );
}
