import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { divisorWithin, quotientInterval } from '../../../core/dosing/interval.ts';

const doubt = fc.double({ min: 0, max: 0.4, noNaN: true });

describe('the interval of a quotient', () => {
  test('is value (1 ± 2 u) where the divisor is exact', () => {
    const { low, high } = quotientInterval(12, 0.03, 0);
    expect([low, high]).toEqual([expect.closeTo(11.28, 12), expect.closeTo(12.72, 12)]);
  });

  test('runs from the largest to the smallest divisor where only that is doubted', () => {
    const { low, high } = quotientInterval(12, 0, 0.1);
    expect([low, high]).toEqual([expect.closeTo(12 / 1.2, 12), expect.closeTo(12 / 0.8, 12)]);
  });

  test('has ends exactly two standard uncertainties off, taken at the end itself', () => {
    fc.assert(
      fc.property(doubt, doubt, (above, below) => {
        const { low, high } = quotientInterval(1, above, below);
        for (const end of low === 0 ? [high] : [low, high]) {
          expect(Math.abs(end - 1)).toBeCloseTo(2 * Math.hypot(above, end * below), 9);
        }
      }),
    );
  });

  test('never narrows with more doubt, above or below', () => {
    fc.assert(
      fc.property(doubt, doubt, doubt, (above, below, more) => {
        const narrow = quotientInterval(1, above, below);
        for (const wide of [
          quotientInterval(1, above + more, below),
          quotientInterval(1, above, below + more),
        ]) {
          expect(wide.low).toBeLessThanOrEqual(narrow.low + 1e-12);
          expect(wide.high).toBeGreaterThanOrEqual(narrow.high - 1e-12);
        }
      }),
    );
  });

  test('stays a number, above zero, whatever the doubt', () => {
    const { low, high } = quotientInterval(12, 3, 7);
    expect(low).toBe(0);
    expect(Number.isFinite(high)).toBe(true);
    expect(high).toBeGreaterThan(12 * 10);
  });
});

test('how far a divisor may be doubted is where its interval ends at the bound, on either side', () => {
  const above = 0.01;
  for (const ratio of [1.03, 1.0692, 1.5, 0.95, 0.6]) {
    const { low, high } = quotientInterval(12, above, divisorWithin(ratio, above));
    expect(ratio > 1 ? high : low).toBeCloseTo(12 * ratio, 9);
  }
  expect(divisorWithin(1.01, above)).toBe(0);
});
