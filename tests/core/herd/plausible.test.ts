import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Animal } from '../../../core/herd/animal.ts';
import { doubtOf } from '../../../core/herd/plausible.ts';
import { grams, kilograms, pounds } from '../../../core/quantity/mass.ts';
import { GRAMS_IN } from '../../oracles/units.ts';
import { makeAnimal } from '../make/animal.ts';
import { hoursAgo, NINE_OCLOCK } from '../make/time.ts';

function doubt(lastKg: number | null, nowKg: number, daysAgo = 60, over: Partial<Animal> = {}) {
  const lastWeight = lastKg === null ? null : { mass: kilograms(lastKg), atMs: hoursAgo(24 * daysAgo) };
  return doubtOf(makeAnimal({ ...over, lastWeight }), kilograms(nowKg), NINE_OCLOCK);
}

describe('a weight is doubted', () => {
  test.each([
    [40, 40, null],
    [40, 53, null],
    [40, 27, null],
    [40, 55, 'far-from-last'],
    [40, 25, 'far-from-last'],
    [null, 40, null],
    [null, 0.4, 'outside-species'],
    [null, 160, 'outside-species'],
    [0, 40, 'far-from-last'],
  ] as const)('last %s kg, now %d kg: %s', (last, now, expected) => {
    expect(doubt(last, now)).toBe(expected);
  });

  test('the sooner after the last weighing the smaller the change that is believed', () => {
    expect(doubt(40, 43.9, 0)).toBeNull();
    expect(doubt(40, 44.1, 0)).toBe('far-from-last');
    expect(doubt(40, 47, 0)).toBe('far-from-last');
    expect(doubt(40, 47, 20)).toBeNull();
    expect(doubt(40, 33, 0)).toBe('far-from-last');
  });

  test('a young animal may gain more', () => {
    expect(doubt(12, 16, 21)).toBe('far-from-last');
    expect(doubt(12, 16, 21, { class: 'young' })).toBeNull();
    expect(doubt(12, 16, 0, { class: 'young' })).toBe('far-from-last');
  });

  test('a clock set back before the last weighing makes nothing easier', () => {
    expect(doubt(40, 47, -300)).toBe('far-from-last');
  });

  test('when pounds were read as kilograms, or kilograms as pounds, whatever the weight', () => {
    const factor = GRAMS_IN.kg / GRAMS_IN.lb;
    fc.assert(
      fc.property(fc.double({ min: 5, max: 60, noNaN: true }), (kg) => {
        expect(doubt(kg, kg * factor)).toBe('pounds-for-kilograms');
        expect(doubt(kg, kg / factor)).toBe('pounds-for-kilograms');
      }),
    );
  });

  test('whenever it is twice or half the last one, for one reason or another', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 60, noNaN: true }), (kg) => {
        expect(doubt(kg, 2 * kg)).not.toBeNull();
        expect(doubt(kg, kg / 2)).not.toBeNull();
      }),
    );
  });

  // Common practice, no source: goat 1 to 350 lb, sheep 2 to 450, cattle 40 to 2,700.
  test.each([
    ['goat', 1, 350],
    ['sheep', 2, 450],
    ['cattle', 40, 2700],
  ] as const)('outside the widest band of a %s, %d to %d lb', (species, low, high) => {
    const animal = makeAnimal({ species, lastWeight: null });
    expect(doubtOf(animal, pounds(low * 0.99), NINE_OCLOCK)).toBe('outside-species');
    expect(doubtOf(animal, pounds(low * 1.01), NINE_OCLOCK)).toBeNull();
    expect(doubtOf(animal, pounds(high * 0.99), NINE_OCLOCK)).toBeNull();
    expect(doubtOf(animal, pounds(high * 1.01), NINE_OCLOCK)).toBe('outside-species');
    expect(doubtOf(animal, grams(0), NINE_OCLOCK)).toBe('outside-species');
  });
});
