/// <reference path="./cephes.d.ts" />
import { compiled, igam, igami, incbi, lgam, ndtri, stdtri } from 'cephes';

// The library is WebAssembly inside JavaScript: its functions are there once it has compiled itself.
await compiled;

/**
 * The value below which a gamma variable of this shape falls with probability `p`.
 *
 * `p` is above 0 and below 1, `shape` and `scale` above 0; else throws `RangeError`.
 */
export function gammaQuantile(p: number, shape: number, scale = 1): number {
  checkProbability(p);
  checkPositive(shape, 'shape');
  checkPositive(scale, 'scale');
  return scale * (shape < LARGE_SHAPE ? igami(shape, 1 - p) : largeGammaQuantile(p, shape));
}

/** From about 3,450 on the library's own search strays to where its distribution function underflows, and throws. */
const LARGE_SHAPE = 1000;

/** Wilson and Hilferty's cube-root approximation, near enough here for Newton's steps to end it at once. */
function largeGammaQuantile(p: number, shape: number): number {
  const ninth = 1 / (9 * shape);
  let x = shape * (1 - ninth + ndtri(p) * Math.sqrt(ninth)) ** 3;
  for (let step = 0; step < 3; step += 1) {
    const density = Math.exp((shape - 1) * Math.log(x) - x - lgam(shape));
    x -= (igam(shape, x) - p) / density;
  }
  return x;
}

/** The value below which a beta variable falls with probability `p`. Bounds as of `gammaQuantile`. */
export function betaQuantile(p: number, alpha: number, beta: number): number {
  checkProbability(p);
  checkPositive(alpha, 'alpha');
  checkPositive(beta, 'beta');
  return incbi(alpha, beta, p);
}

/** The value below which Student's t falls with probability `p`. `freedom` is a whole number from 1 (included). */
export function tQuantile(p: number, freedom: number): number {
  checkProbability(p);
  if (!Number.isInteger(freedom) || freedom < 1) {
    throw new RangeError(`degrees of freedom must be a whole number from 1, not ${freedom}`);
  }
  return stdtri(freedom, p);
}

/** The value below which a standard normal variable falls with probability `p`. */
export function normalQuantile(p: number): number {
  checkProbability(p);
  return ndtri(p);
}

/** The natural logarithm of the gamma function of a number above 0. */
export function logGamma(value: number): number {
  checkPositive(value, 'argument');
  return lgam(value);
}

// The library runs for ever on what is not a number, so nothing reaches it unchecked.
function checkProbability(p: number): void {
  if (!(p > 0 && p < 1)) throw new RangeError(`a probability must lie between 0 and 1, not ${p}`);
}

function checkPositive(value: number, name: string): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name} must be finite and above zero, not ${value}`);
  }
}
