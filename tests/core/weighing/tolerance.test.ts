import fc from 'fast-check';
import { expect, test } from 'vitest';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { leastLoad, maintenanceTolerance } from '../../../core/weighing/tolerance.ts';
import { ANIMAL_SCALE_150_BY_50, MAINTENANCE_CLASS_III } from '../../oracles/scale-tolerance.ts';

test.each(MAINTENANCE_CLASS_III)('a load of %d divisions may be off by %d', (load, allowed) => {
  expect(maintenanceTolerance(grams(load * 50), grams(50)).value).toBe(allowed * 50);
});

test.each(ANIMAL_SCALE_150_BY_50)('%d kg on a platform by 50 g may be off by %d kg', (load, allowed) => {
  expect(maintenanceTolerance(kilograms(load), grams(50)).value).toBeCloseTo(allowed * 1000, 9);
});

test('a load below zero is held to the same as one above', () => {
  expect(maintenanceTolerance(grams(-600), grams(1)).value).toBe(2);
});

test('more load is never held to less', () => {
  const load = fc.double({ min: 0, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(load, load, (a, b) => {
      const [small, large] = [Math.min(a, b), Math.max(a, b)];
      const at = (value: number): number => maintenanceTolerance(grams(value), grams(50)).value;
      expect(at(small)).toBeLessThanOrEqual(at(large));
    }),
  );
});

test('nothing below twenty divisions tells anything', () => {
  expect(leastLoad(grams(50)).value).toBe(1000);
});
