import { describe, expect, test } from 'vitest';
import {
  betaQuantile,
  gammaQuantile,
  logGamma,
  normalQuantile,
  tQuantile,
} from '../../../core/statistics/quantiles.ts';
import { BETA_QUANTILES, GAMMA_QUANTILES, T_QUANTILES } from '../../oracles/quantiles.ts';

const WITHIN = 1e-9;

describe('quantiles agree with another implementation to nine digits', () => {
  test.each(GAMMA_QUANTILES)('gamma: p %d, shape %d', (p, shape, expected) => {
    expect(Math.abs(gammaQuantile(p, shape) / expected - 1)).toBeLessThan(WITHIN);
    expect(Math.abs(gammaQuantile(p, shape, 0.25) / (expected / 4) - 1)).toBeLessThan(WITHIN);
  });

  test.each(BETA_QUANTILES)('beta: p %d of %d and %d', (p, alpha, beta, expected) => {
    expect(Math.abs(betaQuantile(p, alpha, beta) / expected - 1)).toBeLessThan(WITHIN);
  });

  test.each(T_QUANTILES)('Student: p %d at %d', (p, freedom, expected) => {
    expect(Math.abs(tQuantile(p, freedom) / expected - 1)).toBeLessThan(WITHIN);
  });

  test('the normal 97.5 % point is the tabled 1.959964', () => {
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 12);
  });

  test('log gamma of 11 is the logarithm of 10 factorial', () => {
    expect(logGamma(11)).toBeCloseTo(Math.log(3_628_800), 12);
  });
});

describe('what has no quantile is refused at once', () => {
  test.each([0, 1, -0.1, 1.1, Number.NaN])('probability %d', (p) => {
    expect(() => gammaQuantile(p, 2)).toThrow(RangeError);
    expect(() => betaQuantile(p, 2, 2)).toThrow(RangeError);
    expect(() => tQuantile(p, 2)).toThrow(RangeError);
    expect(() => normalQuantile(p)).toThrow(RangeError);
  });

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('shape %d', (shape) => {
    expect(() => gammaQuantile(0.5, shape)).toThrow(RangeError);
    expect(() => gammaQuantile(0.5, 1, shape)).toThrow(RangeError);
    expect(() => betaQuantile(0.5, shape, 1)).toThrow(RangeError);
    expect(() => betaQuantile(0.5, 1, shape)).toThrow(RangeError);
    expect(() => tQuantile(0.5, shape)).toThrow(RangeError);
    expect(() => logGamma(shape)).toThrow(RangeError);
  });

  test('half a degree of freedom', () => {
    expect(() => tQuantile(0.5, 2.5)).toThrow(RangeError);
  });
});
