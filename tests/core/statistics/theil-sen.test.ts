import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MOST_POINTS, theilSen } from '../../../core/statistics/theil-sen.ts';
import { GROWTH_SERIES } from '../../oracles/growth.ts';

describe('the slope of published weights', () => {
  test.each(GROWTH_SERIES)('$name', ({ days, weights, slope, limits, intercept }) => {
    const line = theilSen(days, weights);
    expect(line?.slope).toBeCloseTo(slope, 8);
    if (intercept !== null) expect(line?.intercept).toBeCloseTo(intercept, 8);
    if (limits === null) return;
    expect(line?.limits?.lower).toBeCloseTo(limits[0], 6);
    expect(line?.limits?.upper).toBeCloseTo(limits[1], 6);
  });
});

describe('a line', () => {
  const points = fc.uniqueArray(
    fc.tuple(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 900 })),
    {
      selector: ([x]) => x,
      minLength: 3,
      maxLength: 15,
    },
  );

  test('has its slope between its limits, and both shift with the slope of what is added', () => {
    fc.assert(
      fc.property(points, fc.integer({ min: -5, max: 5 }), (list, tilt) => {
        const xs = list.map(([x]) => x);
        const ys = list.map(([, y]) => y);
        const line = theilSen(xs, ys);
        const tilted = theilSen(
          xs,
          ys.map((y, i) => y + tilt * (xs[i] ?? 0)),
        );
        expect(line?.limits?.lower).toBeLessThanOrEqual((line?.slope ?? 0) + 1e-9);
        expect(line?.limits?.upper).toBeGreaterThanOrEqual((line?.slope ?? 0) - 1e-9);
        expect(tilted?.slope).toBeCloseTo((line?.slope ?? 0) + tilt, 8);
      }),
    );
  });

  test('is not there where all stand above one another', () => {
    expect(theilSen([3, 3, 3], [1, 2, 3])).toBeNull();
    expect(theilSen([], [])).toBeNull();
  });

  test('through two points has a slope and no limits', () => {
    expect(theilSen([0, 2], [39, 35])).toEqual({ slope: -2, intercept: 39, limits: null });
  });

  test('is refused for unlike lists, too many points and what is no number', () => {
    expect(() => theilSen([1, 2], [1])).toThrow(RangeError);
    expect(() => theilSen([1, Number.NaN], [1, 2])).toThrow(RangeError);
    const many = Array.from({ length: MOST_POINTS + 1 }, (_, i) => i);
    expect(() => theilSen(many, many)).toThrow(RangeError);
  });
});
