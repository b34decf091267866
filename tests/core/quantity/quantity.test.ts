import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { grams } from '../../../core/quantity/mass.ts';
import { add, distance, quantity, ratio, scale, subtract } from '../../../core/quantity/quantity.ts';
import { millilitres } from '../../../core/quantity/volume.ts';

const amount = fc.double({ min: -1e6, max: 1e6, noNaN: true });

describe('quantities', () => {
  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('%s is refused', (value) => {
    expect(() => quantity('g', value)).toThrow(RangeError);
  });

  test('a sum that overflows is refused', () => {
    expect(() => add(grams(Number.MAX_VALUE), grams(Number.MAX_VALUE))).toThrow(RangeError);
  });

  test('taking away what was added gives back the first, whatever the two are', () => {
    fc.assert(
      fc.property(amount, amount, (a, b) => {
        expect(subtract(add(grams(a), grams(b)), grams(b)).value).toBeCloseTo(a, 6);
      }),
    );
  });

  test('a distance is the same both ways and never negative', () => {
    fc.assert(
      fc.property(amount, amount, (a, b) => {
        const there = distance(grams(a), grams(b)).value;
        expect(there).toBe(distance(grams(b), grams(a)).value);
        expect(there).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('scaling by a ratio turns the second into the first', () => {
    expect(scale(grams(4), ratio(grams(10), grams(4))).value).toBeCloseTo(10, 12);
  });

  test('a ratio to zero is refused', () => {
    expect(() => ratio(grams(1), grams(0))).toThrow(RangeError);
  });

  test('a result keeps the unit of what it was made from', () => {
    expect(add(millilitres(1), millilitres(2))).toEqual({ unit: 'mL', value: 3 });
  });

  test('grams and millilitres do not mix: the compiler refuses it', () => {
    // @ts-expect-error a mass and a volume have no sum
    expect(add(grams(1), millilitres(1)).value).toBe(2);
    // @ts-expect-error a mass and a volume have no ratio
    expect(ratio(grams(1), millilitres(1))).toBe(1);
  });
});
