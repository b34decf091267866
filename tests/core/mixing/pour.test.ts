import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { guidePour, pourBand } from '../../../core/mixing/pour.ts';
import { grams } from '../../../core/quantity/mass.ts';

const TARGET = grams(902);

describe('pouring advice', () => {
  test.each([
    [-6, 'jug-lifted'],
    [-5, 'pour'],
    [0, 'pour'],
    [811, 'pour'],
    [812, 'slow'],
    [897, 'slow'],
    [898, 'stop'],
    [902, 'stop'],
    [906, 'stop'],
    [907, 'over'],
    [2000, 'over'],
  ])('%d g towards 902 g on a 1 g scale is "%s"', (water, advice) => {
    expect(guidePour(grams(water), TARGET, grams(1)).advice).toBe(advice);
  });

  test('the band is half a percent, or two steps of a coarse scale', () => {
    expect(pourBand(TARGET, grams(1)).value).toBeCloseTo(4.51, 9);
    expect(pourBand(TARGET, grams(5)).value).toBe(10);
  });

  test('as water rises the advice only ever goes forward', () => {
    const rank = { 'jug-lifted': 0, pour: 1, slow: 2, stop: 3, over: 4 };
    fc.assert(
      fc.property(
        fc.double({ min: -200, max: 3000, noNaN: true }),
        fc.double({ min: 0, max: 500, noNaN: true }),
        fc.constantFrom(0.1, 1, 2, 5),
        (water, more, division) => {
          const before = guidePour(grams(water), TARGET, grams(division)).advice;
          const after = guidePour(grams(water + more), TARGET, grams(division)).advice;
          expect(rank[after]).toBeGreaterThanOrEqual(rank[before]);
        },
      ),
    );
  });

  test('the share is of the target, and the water is what the scale shows', () => {
    const status = guidePour(grams(451), TARGET, grams(1));
    expect(status.share).toBeCloseTo(0.5, 9);
    expect(status.water.value).toBe(451);
  });
});
