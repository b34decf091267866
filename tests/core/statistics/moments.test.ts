import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { correlation, covariance, mean, median, variance } from '../../../core/statistics/moments.ts';
import { EPGS, VIGNETTE } from '../../oracles/reduction.ts';

const values = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 20 });

describe('moments of published counts', () => {
  test('mean, variance and covariance are those printed', () => {
    expect(mean(EPGS.before)).toBeCloseTo(EPGS.moments.mean[0], 8);
    expect(mean(EPGS.after)).toBeCloseTo(EPGS.moments.mean[1], 8);
    expect(variance(EPGS.before)).toBeCloseTo(EPGS.moments.variance[0], 4);
    expect(variance(EPGS.after)).toBeCloseTo(EPGS.moments.variance[1], 6);
    expect(covariance(EPGS.before, EPGS.after)).toBeCloseTo(EPGS.moments.covariance, 4);
  });

  test('the correlation is the one printed', () => {
    expect(correlation(VIGNETTE.before, VIGNETTE.after)).toBeCloseTo(VIGNETTE.correlation, 9);
  });
});

test('a list that does not vary correlates with nothing', () => {
  expect(correlation([1, 2, 3], [4, 4, 4])).toBeNull();
});

test('the median is the middle, or halfway between the middle two', () => {
  expect(median([9, 1, 5])).toBe(5);
  expect(median([9, 1, 5, 7])).toBe(6);
});

test('the variance is never negative and does not change when all move together', () => {
  fc.assert(
    fc.property(values, fc.integer({ min: -500, max: 500 }), (list, shift) => {
      expect(variance(list)).toBeGreaterThanOrEqual(0);
      expect(variance(list.map((value) => value + shift))).toBeCloseTo(variance(list), 6);
    }),
  );
});

test('too few values are refused', () => {
  expect(() => mean([])).toThrow(RangeError);
  expect(() => median([])).toThrow(RangeError);
  expect(() => variance([1])).toThrow(RangeError);
  expect(() => covariance([1, 2], [1])).toThrow(RangeError);
});
