import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { combine, rectangular, triangular } from '../../../core/dosing/uncertainty.ts';
import { QUAM_A1 } from '../../oracles/uncertainty.ts';

const part = fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 0.5, noNaN: true }));
const parts = fc.array(part, { minLength: 1, maxLength: 6 });

function budgetOf(relatives: readonly number[]) {
  return combine(relatives.map((relative, i) => ({ of: `part ${i}`, relative })));
}

describe('the published error budget of a calibration standard', () => {
  const { purity, mass, volume, concentration } = QUAM_A1;

  test('its volume has the published standard uncertainty, to all its digits', () => {
    const u = budgetOf([
      triangular(volume.flaskHalfWidth),
      volume.fillingU,
      rectangular(volume.temperatureHalfWidth),
    ]).relative;
    expect(u).toBeCloseTo(volume.u, 14);
  });

  test('its purity is a rectangular half width over the root of three', () => {
    expect(rectangular(purity.halfWidth)).toBeCloseTo(purity.u, 9);
  });

  test('its concentration has u_c 0.8352 mg/L and U 1.670 mg/L', () => {
    const c = (1000 * mass.value * purity.value) / volume.value;
    expect(c).toBeCloseTo(concentration.value, 5);
    const { relative, contributions } = combine([
      { of: 'purity', relative: rectangular(purity.halfWidth) / purity.value },
      { of: 'mass', relative: mass.u / mass.value },
      { of: 'volume', relative: volume.u / volume.value },
    ]);
    expect(Math.abs(c * relative - concentration.u)).toBeLessThan(concentration.uWithin);
    expect(2 * c * relative).toBeCloseTo(concentration.expandedK2, 3);
    for (const [i, part] of Object.values(QUAM_A1.parts).entries()) {
      expect(Math.abs((contributions[i]?.relative ?? 0) * c - part)).toBeLessThan(0.0001);
    }
  });
});

describe('combining causes of doubt', () => {
  test('the shares add to one, unless there is no doubt at all', () => {
    fc.assert(
      fc.property(parts, (relatives) => {
        const sum = budgetOf(relatives).shares.reduce((total, share) => total + share, 0);
        expect(sum).toBeCloseTo(relatives.every((part) => part === 0) ? 0 : 1, 9);
      }),
    );
  });

  test('the whole is never below the largest part nor above the plain sum', () => {
    fc.assert(
      fc.property(parts, (relatives) => {
        const { relative } = budgetOf(relatives);
        expect(relative).toBeGreaterThanOrEqual(Math.max(...relatives) * (1 - 1e-12));
        expect(relative).toBeLessThanOrEqual(relatives.reduce((a, b) => a + b, 0) * (1 + 1e-12));
      }),
    );
  });

  test('more doubt in one cause never makes less of the whole', () => {
    fc.assert(
      fc.property(parts, fc.double({ min: 0, max: 0.5, noNaN: true }), (relatives, extra) => {
        const [first = 0, ...rest] = relatives;
        expect(budgetOf([first + extra, ...rest]).relative).toBeGreaterThanOrEqual(
          budgetOf(relatives).relative,
        );
      }),
    );
  });

  test('nothing to combine is no doubt', () => {
    expect(combine([])).toEqual({ relative: 0, contributions: [], shares: [] });
  });
});
