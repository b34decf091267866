import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Input, propagate, type Spread, standardOf } from '../../../core/dosing/propagation.ts';
import { combine } from '../../../core/dosing/uncertainty.ts';
import { QUAM_A1 } from '../../oracles/uncertainty.ts';

const normal = (standard: number): Spread => ({ shape: 'normal', standard });
const rectangular = (halfWidth: number): Spread => ({ shape: 'rectangular', halfWidth });
const triangular = (halfWidth: number): Spread => ({ shape: 'triangular', halfWidth });

/** A figure of the list; missing is a mistake of the test. */
function at(values: readonly number[], i: number): number {
  const value = values[i];
  if (value === undefined) throw new Error(`no input ${i}`);
  return value;
}

describe('the published error budget of a calibration standard, from its inputs', () => {
  const { purity, mass, volume, concentration } = QUAM_A1;
  // The published model: the nominal volume times a factor for each of the three.
  const flask = propagate(
    [
      { of: 'flask', value: 1, spread: triangular(volume.flaskHalfWidth / volume.value) },
      { of: 'filling', value: 1, spread: normal(volume.fillingU / volume.value) },
      { of: 'temperature', value: 1, spread: rectangular(volume.temperatureHalfWidth / volume.value) },
    ],
    (v) => volume.value * at(v, 0) * at(v, 1) * at(v, 2),
  );
  const whole = propagate(
    [
      { of: 'purity', value: purity.value, spread: rectangular(purity.halfWidth) },
      { of: 'mass', value: mass.value, spread: normal(mass.u) },
      { of: 'volume', value: volume.value, spread: normal(flask.uncertainty) },
    ],
    (v) => (1000 * at(v, 1) * at(v, 0)) / at(v, 2),
  );

  test('u(V) is the published 0.0664730521840743 mL', () => {
    expect(flask.value).toBe(100);
    expect(flask.uncertainty).toBeCloseTo(volume.u, 11);
  });

  test('u_c is 0.8352 mg/L, not the 0.8645 that comes of rounding the parts first', () => {
    expect(whole.value).toBeCloseTo(concentration.value, 5);
    expect(Math.abs(whole.uncertainty - concentration.u)).toBeLessThan(0.00005);
    expect(2 * whole.uncertainty).toBeCloseTo(concentration.expandedK2, 3);
  });

  test('each input adds what was worked out by hand, with its sign', () => {
    const { parts } = QUAM_A1;
    for (const [i, part] of [parts.purity, parts.mass, parts.volume].entries()) {
      expect(Math.abs((whole.parts[i]?.uncertainty ?? 0) - part)).toBeLessThan(0.0001);
    }
    const sensitivities = whole.parts.map(({ sensitivity }) => sensitivity);
    expect(sensitivities[0]).toBeCloseTo(1002.8, 4);
    expect(sensitivities[1]).toBeCloseTo(9.999, 6);
    expect(sensitivities[2]).toBeCloseTo(-10.0269972, 6);
  });
});

describe('a spread', () => {
  test.each([
    [normal(0.4), 0.4],
    [rectangular(0.3), 0.3 / Math.sqrt(3)],
    [triangular(0.3), 0.3 / Math.sqrt(6)],
  ])('%j has the standard uncertainty of its shape', (spread, u) => {
    expect(standardOf(spread)).toBeCloseTo(u, 15);
  });
});

const positive = fc.double({ min: 0.01, max: 1000, noNaN: true });
const share = fc.double({ min: 0, max: 0.1, noNaN: true });
const factors = fc.array(fc.tuple(positive, share, fc.constantFrom(1, -1)), { minLength: 1, maxLength: 5 });

describe('propagation', () => {
  test('agrees with combining shares, for every product and quotient', () => {
    fc.assert(
      fc.property(factors, (given) => {
        const inputs = given.map(([value, u], i) => ({ of: `${i}`, value, spread: normal(value * u) }));
        const found = propagate(inputs, (v) =>
          given.reduce((product, [, , power], i) => product * at(v, i) ** power, 1),
        );
        const budget = combine(given.map(([, relative], i) => ({ of: `${i}`, relative })));
        expect(found.uncertainty / found.value).toBeCloseTo(budget.relative, 8);
        for (const [i, part] of found.parts.entries()) {
          if (budget.relative > 1e-6) expect(part.share).toBeCloseTo(budget.shares[i] ?? 0, 6);
        }
      }),
    );
  });

  test('is the same however the inputs are ordered', () => {
    const inputs: Input[] = [
      { of: 'a', value: 3, spread: normal(0.1) },
      { of: 'b', value: 5, spread: rectangular(0.2) },
    ];
    const there = propagate(inputs, (v) => at(v, 0) / at(v, 1));
    const back = propagate([...inputs].reverse(), (v) => at(v, 1) / at(v, 0));
    expect(back.uncertainty).toBeCloseTo(there.uncertainty, 12);
  });

  test('of inputs without doubt is without doubt, and blames nobody', () => {
    const found = propagate([{ of: 'a', value: 0, spread: normal(0) }], (v) => 2 * at(v, 0) + 1);
    expect(found).toMatchObject({ value: 1, uncertainty: 0, parts: [{ share: 0 }] });
    expect(found.parts[0]?.sensitivity).toBeCloseTo(2, 9);
  });
});
