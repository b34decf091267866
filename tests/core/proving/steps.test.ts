import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  ENOUGH,
  fitsSteps,
  likelySteps,
  NO_STEPS,
  seeSteps,
  USUAL_STEPS,
} from '../../../core/proving/steps.ts';
import { grams } from '../../../core/quantity/mass.ts';
import type { Reading } from '../../../core/weighing/reading.ts';

function shown(value: number, lastDigit: number, more: Partial<Reading> = {}): Reading {
  return {
    role: 'platform',
    mass: grams(value * lastDigit),
    division: grams(lastDigit),
    stability: 'stable',
    net: false,
    zero: false,
    at: 0,
    ...more,
  };
}
const after = (values: readonly number[], lastDigit = 10) =>
  values.reduce((steps, value) => seeSteps(steps, shown(value, lastDigit)), NO_STEPS);

test('the true step is never ruled out, whatever is shown, in kilograms and in pounds', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...USUAL_STEPS),
      fc.constantFrom(1, 10, 45.359237, 0.1),
      fc.array(fc.integer({ min: -3000, max: 3000 }), { maxLength: 60 }),
      (step, lastDigit, counts) => {
        const steps = after(
          counts.map((count) => count * step),
          lastDigit,
        );
        expect(fitsSteps(steps, step)).toBe(true);
        expect(likelySteps(steps) ?? step).toBeGreaterThanOrEqual(step);
      },
    ),
  );
});

test('one value off a step rules it out for good', () => {
  expect(fitsSteps(after([100, 50, 35]), 5)).toBe(true);
  expect(fitsSteps(after([100, 50, 35, 36, 100]), 5)).toBe(false);
});

test('nothing is likely before enough different values were shown, and standing still shows one', () => {
  expect(likelySteps(after(Array.from({ length: 500 }, () => 400)))).toBeNull();
  const values = [5, 15, 20, 35, 55, 70, 85, 95];
  expect(values).toHaveLength(ENOUGH);
  expect(likelySteps(after(values.slice(1)))).toBeNull();
  expect(likelySteps(after(values))).toBe(5);
  expect(likelySteps(after([...values, 7]))).toBe(1);
});

test('an empty scale tells nothing, and a fault is no value', () => {
  expect(after([0, 0, 0])).toEqual({ ...NO_STEPS, lastDigit: grams(10) });
  const steps = after([100, 50]);
  expect(seeSteps(steps, shown(33, 10, { fault: 'over' }))).toBe(steps);
});

test('other decimals start it over', () => {
  const steps = seeSteps(after([5, 15, 20]), shown(3, 1));
  expect(steps).toEqual({ lastDigit: grams(1), common: 3, values: [3] });
});
