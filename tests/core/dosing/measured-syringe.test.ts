import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type MeasuredSyringe, measuredTolerance } from '../../../core/dosing/measured-syringe.ts';
import { drawTolerance, type Syringe, syringeTolerance } from '../../../core/dosing/syringe.ts';
import { planSyringe } from '../../../core/dosing/syringe-plan.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { WEIGHED_SYRINGE } from '../../oracles/weighed-syringe.ts';
import { makeSyringe } from '../make/syringe.ts';

function measured(bias: number, spread: number, biasUncertainty = 0.01, mark = 3): MeasuredSyringe {
  return {
    mark: millilitres(mark),
    bias: millilitres(bias),
    biasUncertainty: millilitres(biasUncertainty),
    spread: millilitres(spread),
  };
}

const six = (found: MeasuredSyringe | null): Syringe => ({ ...makeSyringe(6, 0.1), measured: found });

describe('the tolerance of a measured syringe', () => {
  test('at its mark is |bias| + 2 u(bias) + 2 spread, as worked through by hand', () => {
    const { biasMl, spreadMl, biasUncertaintyMl, markMl, toleranceAtMarkMl } = WEIGHED_SYRINGE;
    const found = measured(biasMl, spreadMl, biasUncertaintyMl, markMl);
    expect(measuredTolerance(found, millilitres(markMl)).value).toBeCloseTo(toleranceAtMarkMl, 12);
  });

  test('is the same below its mark and grows with the volume above it', () => {
    const found = measured(0.05, 0.02);
    const at = (ml: number): number => measuredTolerance(found, millilitres(ml)).value;
    expect(at(3)).toBeCloseTo(0.11, 12);
    expect(at(1)).toBeCloseTo(0.11, 12);
    expect(at(6)).toBeCloseTo(0.22, 12);
  });

  test('is the same whichever way the syringe is off', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.1, max: 6, noNaN: true }),
        (bias, ml) => {
          const at = (signed: number): number =>
            measuredTolerance(measured(signed, 0.02), millilitres(ml)).value;
          expect(at(bias)).toBe(at(-bias));
        },
      ),
    );
  });

  test('takes the place of what the standard allows, and only where there is one', () => {
    expect(drawTolerance(six(measured(0.05, 0.02)), millilitres(3)).value).toBeCloseTo(0.11, 12);
    expect(drawTolerance(six(null), millilitres(3))).toEqual(syringeTolerance(six(null), millilitres(3)));
  });
});

describe('the plan with a measured syringe', () => {
  const relative = (found: MeasuredSyringe | null): number | undefined =>
    planSyringe(millilitres(3.3), millilitres(5), [six(found)])?.relative;

  // At 3.3 mL the tolerance is 0.11 * 3.3 / 3, rectangular; half a mark of reading, rectangular; over 3.3 mL.
  test('has the error its check gives: tolerance and reading, each rectangular', () => {
    const tolerance = (0.11 * 1.1) / Math.sqrt(3);
    const reading = 0.05 / Math.sqrt(3);
    expect(relative(measured(0.05, 0.02))).toBeCloseTo(Math.hypot(tolerance, reading) / 3.3, 12);
  });

  test('is better known than the standard where the syringe is better, and worse where it is worse', () => {
    expect(relative(measured(0.01, 0.01)) ?? 1).toBeLessThan(relative(null) ?? 0);
    expect(relative(measured(-0.1, 0.03)) ?? 0).toBeGreaterThan(relative(null) ?? 1);
  });

  test('does not take the bias off the dose: the mark stays where the exact dose asks', () => {
    const plan = planSyringe(millilitres(3.3), millilitres(5), [six(measured(-0.15, 0.01))]);
    expect(plan?.total.value).toBe(3.3);
  });

  test('is none where the syringe was found off by more than a tenth of the draw', () => {
    expect(planSyringe(millilitres(3.3), millilitres(5), [six(measured(-0.3, 0.03))])).toBeNull();
  });
});
