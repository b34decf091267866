import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimalsOf, fromSteps, stepsIn } from '../../../core/quantity/round.ts';

const step = fc.constantFrom(0.01, 0.02, 0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 5);
const value = fc.double({ min: 0, max: 500, noNaN: true });

describe('rounding to marks', () => {
  test.each([
    [3.30199, 0.1, 'nearest', 33],
    [3.30199, 0.2, 'nearest', 17],
    [3.25, 0.1, 'nearest', 33],
    [0.3, 0.1, 'down', 3],
    [0.1 + 0.2, 0.1, 'up', 3],
    [2.99, 1, 'down', 2],
    [2.01, 1, 'up', 3],
    [0, 0.1, 'nearest', 0],
  ] as const)('%d in steps of %d, rounded %s, is %d steps', (number, size, rounding, steps) => {
    expect(stepsIn(number, size, rounding)).toBe(steps);
  });

  test.each([0, -1, Number.NaN])('a step of %d is refused', (size) => {
    expect(() => stepsIn(1, size, 'nearest')).toThrow(RangeError);
  });

  test('down never passes the value, up never falls short, nearest is within half a step', () => {
    fc.assert(
      fc.property(value, step, (number, size) => {
        const dust = 2e-9 * size;
        expect(stepsIn(number, size, 'down') * size).toBeLessThanOrEqual(number + dust + 1e-12);
        expect(stepsIn(number, size, 'up') * size).toBeGreaterThanOrEqual(number - dust - 1e-12);
        const nearest = stepsIn(number, size, 'nearest') * size;
        expect(Math.abs(nearest - number)).toBeLessThanOrEqual(size / 2 + dust + 1e-12);
      }),
    );
  });

  test('a larger value never has fewer steps', () => {
    fc.assert(
      fc.property(value, value, step, fc.constantFrom('nearest', 'down', 'up'), (a, b, size, rounding) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(stepsIn(low, size, rounding)).toBeLessThanOrEqual(stepsIn(high, size, rounding));
      }),
    );
  });

  test('a value already on a mark stays there, whichever way it is rounded', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2000 }), step, (steps, size) => {
        const onMark = fromSteps(steps, size);
        for (const rounding of ['nearest', 'down', 'up'] as const) {
          expect(Math.abs(stepsIn(onMark, size, rounding) - steps)).toBe(0);
        }
      }),
    );
  });

  test('a number of steps comes out as a clean decimal', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2000 }), step, (steps, size) => {
        const decimals = (String(fromSteps(steps, size)).split('.')[1] ?? '').length;
        expect(decimals).toBeLessThanOrEqual(decimalsOf(size));
      }),
    );
    expect(fromSteps(33, 0.1)).toBe(3.3);
  });

  test.each([
    [5, 0],
    [1, 0],
    [0.5, 1],
    [0.1, 1],
    [0.25, 2],
    [0.05, 2],
    [0.125, 3],
  ])('marks %d apart need %d decimals', (size, decimals) => {
    expect(decimalsOf(size)).toBe(decimals);
  });
});
