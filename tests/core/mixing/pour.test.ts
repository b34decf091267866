import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { guidePour } from '../../../core/mixing/pour.ts';
import { grams } from '../../../core/quantity/mass.ts';

const TARGET = grams(902);

describe('pouring advice', () => {
  test.each([
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
  ])('%d g towards 902 g, good within 4.5 g, is "%s"', (water, advice) => {
    expect(guidePour(grams(water), TARGET, grams(4.5)).advice).toBe(advice);
  });

  test('as water rises the advice only ever goes forward', () => {
    const rank = { pour: 1, slow: 2, stop: 3, over: 4 };
    fc.assert(
      fc.property(
        fc.double({ min: -200, max: 3000, noNaN: true }),
        fc.double({ min: 0, max: 500, noNaN: true }),
        fc.constantFrom(0.1, 1, 5, 10),
        (water, more, band) => {
          const before = guidePour(grams(water), TARGET, grams(band)).advice;
          const after = guidePour(grams(water + more), TARGET, grams(band)).advice;
          expect(rank[after]).toBeGreaterThanOrEqual(rank[before]);
        },
      ),
    );
  });

  test('the share is of the target', () => {
    const status = guidePour(grams(451), TARGET, grams(1));
    expect(status.share).toBeCloseTo(0.5, 9);
  });
});
