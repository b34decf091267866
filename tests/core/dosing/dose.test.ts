import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Dose, doseFor, exactDose } from '../../../core/dosing/dose.ts';
import { SYRINGE_CATALOGUE } from '../../../core/dosing/syringe.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import { makeHeld } from '../make/held.ts';
import { makeJug } from '../make/jug.ts';
import { makeRegimen } from '../make/regimen.ts';

const kg = fc.double({ min: 2, max: 150, noNaN: true });
const strength = fc.double({ min: 10, max: 200, noNaN: true });
const shares = fc.double({ min: 0, max: 0.1, noNaN: true });

function dose(weightKg: number, mg = 49.453, jugDoubt = 0.005, kgDoubt = 0.05): Dose | null {
  const held = makeHeld(weightKg, { uncertainty: grams(kgDoubt * 1000) });
  return doseFor(
    held,
    makeRegimen(),
    makeJug({ strength: mgPerMl(mg), relative: jugDoubt }),
    SYRINGE_CATALOGUE,
  );
}

/** A dose that the catalogue is known to be able to measure. */
function measured(...args: Parameters<typeof dose>): Dose {
  const found = dose(...args);
  if (found === null) throw new Error(`the catalogue cannot measure for ${args[0]} kg`);
  return found;
}

describe('the exact dose', () => {
  test('is linear in the weight', () => {
    fc.assert(
      fc.property(kg, fc.double({ min: 0.1, max: 10, noNaN: true }), (weight, factor) => {
        const one = exactDose(makeHeld(weight), makeRegimen(), makeJug()).value;
        expect(exactDose(makeHeld(weight * factor), makeRegimen(), makeJug()).value / one).toBeCloseTo(
          factor,
          9,
        );
      }),
    );
  });

  test('halves when the strength doubles', () => {
    fc.assert(
      fc.property(kg, strength, (weight, mg) => {
        const at = (value: number): number =>
          exactDose(makeHeld(weight), makeRegimen(), makeJug({ strength: mgPerMl(value) })).value;
        expect(at(2 * mg) * 2).toBeCloseTo(at(mg), 9);
      }),
    );
  });

  test('is a dose for the weight held, not for the last weight of the animal', () => {
    expect(exactDose(makeHeld(20), makeRegimen(), makeJug()).value).toBeCloseTo(4.8531, 4);
  });
});

describe('the measured dose', () => {
  test('delivers what volume, strength and weight say, never above the ceiling', () => {
    fc.assert(
      fc.property(kg, strength, (weight, mg) => {
        const found = dose(weight, mg);
        if (found === null) return;
        expect(found.delivered.value).toBeCloseTo((found.plan.total.value * mg) / weight, 9);
        expect(found.delivered.value).toBeLessThanOrEqual(18 + 1e-6);
      }),
      { numRuns: 1000 },
    );
  });

  test('has an interval two combined uncertainties either way, a little more upwards', () => {
    fc.assert(
      fc.property(kg, (weight) => {
        const { delivered, budget } = measured(Math.max(weight, 5));
        const [down, up] = [delivered.value - delivered.low, delivered.high - delivered.value];
        expect((down + up) / 4 / delivered.value / budget.relative).toBeCloseTo(1, 2);
        expect(up).toBeGreaterThanOrEqual(down - 1e-12);
      }),
    );
  });

  test('shares its doubt among scale, strength and syringe, and the shares add to one', () => {
    fc.assert(
      fc.property(kg, shares, shares, (weight, jugDoubt, kgDoubt) => {
        const { budget } = measured(Math.max(weight, 5), 49.453, jugDoubt, kgDoubt);
        expect(budget.contributions.map(({ of }) => of)).toEqual([
          'scale and animal',
          'strength of the jug',
          'syringe',
        ]);
        expect(budget.shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
      }),
    );
  });

  test('is never better known because something in it is known less well', () => {
    fc.assert(
      fc.property(kg, shares, shares, shares, (weight, jugDoubt, kgDoubt, more) => {
        const width = (...doubts: readonly [number, number]): number => {
          const { delivered } = measured(Math.max(weight, 5), 49.453, ...doubts);
          return delivered.high - delivered.low;
        };
        const narrow = width(jugDoubt, kgDoubt);
        expect(width(jugDoubt + more, kgDoubt)).toBeGreaterThanOrEqual(narrow - 1e-9);
        expect(width(jugDoubt, kgDoubt + more)).toBeGreaterThanOrEqual(narrow - 1e-9);
      }),
    );
  });

  test('for a small kid blames the syringe most, as the trade knows', () => {
    const { budget } = measured(5, 49.453, 0.005, 0.03);
    expect(Math.max(...budget.shares)).toBe(budget.shares[2]);
  });

  test('is none where nothing on the shelf can measure it', () => {
    expect(doseFor(makeHeld(40), makeRegimen(), makeJug(), [])).toBeNull();
    expect(dose(0.3)).toBeNull();
  });
});
