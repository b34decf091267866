import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { doseFor } from '../../../core/dosing/dose.ts';
import { COARSEST_NEED, type DoseAtHand, FINEST_NEED, needFor } from '../../../core/dosing/need.ts';
import { SYRINGE_CATALOGUE } from '../../../core/dosing/syringe.ts';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { scaleUncertainty } from '../../../core/weighing/reading.ts';
import { USUAL_NEED } from '../../../core/weighing/settle.ts';
import { makeJug } from '../make/jug.ts';
import { makeRegimen } from '../make/regimen.ts';
import { makeSyringe } from '../make/syringe.ts';

/** The goat's rule with its ceiling at this many times the target. */
function ceilingAt(times: number) {
  const { target, ceiling } = makeRegimen();
  return makeRegimen({ ceiling: { ...ceiling, value: times * target.value } });
}

function need(kg: number, over: Partial<DoseAtHand> = {}): number {
  return needFor({
    weight: kilograms(kg),
    division: grams(50),
    regimens: [makeRegimen()],
    jug: makeJug(),
    syringes: [makeSyringe(6, 0.1), makeSyringe(12, 0.2), makeSyringe(35, 1)],
    ...over,
  });
}

describe('the weight must be known', () => {
  test('no better than half of what jug, syringe and scale leave in doubt', () => {
    const measured = { mark: { unit: 'mL', value: 6 }, bias: { unit: 'mL', value: 0 } } as const;
    const sure = {
      ...makeSyringe(6, 0.1),
      measured: {
        ...measured,
        biasUncertainty: { unit: 'mL', value: 0.01 },
        spread: { unit: 'mL', value: 0.02 },
      },
    } as const;
    const over = { syringes: [sure], division: grams(10), jug: makeJug({ relative: 0.002 }) };
    expect(need(24, over)).toBeLessThan(need(24));
    expect(need(24, over)).toBeGreaterThan(FINEST_NEED);
  });

  test('as well as it ever can where the interval nearly touches the ceiling, or crosses it anyway', () => {
    expect(need(20, { regimens: [ceilingAt(1.04)] })).toBe(FINEST_NEED);
    expect(need(20, { regimens: [ceilingAt(1.0001)] })).toBe(FINEST_NEED);
  });

  test('better in a small kid near its ceiling than in a big buck far from it', () => {
    const division = grams(10);
    const syringes = SYRINGE_CATALOGUE;
    const kid = need(4, { regimens: [ceilingAt(1.05)], division, syringes });
    expect(kid).toBeLessThan(USUAL_NEED);
    expect(need(90)).toBe(COARSEST_NEED);
  });

  test('by the strictest rule while nobody knows which animal it is', () => {
    const strict = ceilingAt(1.04);
    expect(need(20, { regimens: [makeRegimen(), strict] })).toBe(need(20, { regimens: [strict] }));
  });

  test('as usual where no syringe can measure the dose', () => {
    expect(need(3, { syringes: [makeSyringe(60, 1)] })).toBe(USUAL_NEED);
  });
});

test('wherever a weight within the bounds can keep the interval under the ceiling, the need does', () => {
  const kg = fc.double({ min: 3, max: 120, noNaN: true });
  const times = fc.double({ min: 1.01, max: 1.6, noNaN: true });
  fc.assert(
    fc.property(kg, times, fc.double({ min: 0.001, max: 0.05, noNaN: true }), (weightKg, ratio, relative) => {
      const regimen = ceilingAt(ratio);
      const jug = makeJug({ relative });
      const division = grams(50);
      const weight = kilograms(weightKg);
      const asked = needFor({ weight, division, regimens: [regimen], jug, syringes: SYRINGE_CATALOGUE });
      expect(asked).toBeGreaterThanOrEqual(FINEST_NEED);
      expect(asked).toBeLessThanOrEqual(COARSEST_NEED);
      const highAt = (motion: number) => {
        const scale = scaleUncertainty(weight, division).value;
        const uncertainty = grams(Math.hypot(scale, motion * weight.value));
        const held = { mass: weight, uncertainty, at: 0, changedFrom: null };
        return doseFor(held, regimen, jug, SYRINGE_CATALOGUE)?.delivered.high ?? 0;
      };
      if (highAt(FINEST_NEED) <= regimen.ceiling.value)
        expect(highAt(asked)).toBeLessThanOrEqual(regimen.ceiling.value * (1 + 1e-9));
    }),
  );
});
