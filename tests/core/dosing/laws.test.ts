import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decideDose } from '../../../core/dosing/decide.ts';
import { type Dose, doseFor, exactDose } from '../../../core/dosing/dose.ts';
import type { Syringe } from '../../../core/dosing/syringe.ts';
import { planSyringe, type SyringePlan } from '../../../core/dosing/syringe-plan.ts';
import { grams, kilograms, massIn, pounds } from '../../../core/quantity/mass.ts';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { makeAnimal } from '../make/animal.ts';
import { NO_DOUBTS } from '../make/caution-input.ts';
import { makeHeld } from '../make/held.ts';
import { makeJug } from '../make/jug.ts';
import { makeRegimen } from '../make/regimen.ts';
import { makeSyringe } from '../make/syringe.ts';
import { makeWorld } from '../make/world.ts';

const RUNS = { numRuns: 1500 };
const kg = fc.double({ min: 1, max: 160, noNaN: true });
const mg = fc.double({ min: 5, max: 200, noNaN: true });
const doubt = fc.double({ min: 0, max: 0.08, noNaN: true });
const syringe = fc
  .record({
    graduation: fc.constantFrom(0.01, 0.05, 0.1, 0.2, 0.5, 1),
    marks: fc.integer({ min: 10, max: 100 }),
  })
  .map(({ graduation, marks }) => makeSyringe(Number((graduation * marks).toFixed(2)), graduation));
const shelf = fc.array(syringe, { minLength: 1, maxLength: 6 });

/** Rounding and twice the relative uncertainty: what a plan is chosen by. */
function errorOf(plan: SyringePlan): number {
  return Math.abs(plan.rounding) + 2 * plan.relative;
}

function plan(ml: number, syringes: readonly Syringe[], room = 1.5): SyringePlan | null {
  return planSyringe(millilitres(ml), millilitres(room * ml), syringes);
}

describe('a dose and the weight', () => {
  test('the exact dose scales with the weight: k times the weight is k times the volume', () => {
    fc.assert(
      fc.property(kg, mg, fc.double({ min: 0.05, max: 20, noNaN: true }), (weight, strength, k) => {
        const jug = makeJug({ strength: mgPerMl(strength) });
        const one = exactDose(makeHeld(weight), makeRegimen(), jug).value;
        expect(exactDose(makeHeld(k * weight), makeRegimen(), jug).value / one).toBeCloseTo(k, 9);
      }),
      RUNS,
    );
  });
});

describe('double dilution', () => {
  test('doubles the exact volume and leaves the rate', () => {
    fc.assert(
      fc.property(kg, mg, (weight, strength) => {
        const at = (value: number): number =>
          exactDose(makeHeld(weight), makeRegimen(), makeJug({ strength: mgPerMl(value) })).value;
        expect(at(strength / 2)).toBeCloseTo(2 * at(strength), 9);
      }),
      RUNS,
    );
  });

  /** The old plan carried out twice: twice the volume, its tolerances added, its readings independent. */
  function twice(old: SyringePlan): number {
    const reading = old.syringe.graduation.value / 2 / Math.sqrt(3);
    const total = old.total.value;
    const tolerance = Math.sqrt((old.relative * total) ** 2 - old.draws.length * reading ** 2);
    const both = Math.hypot(2 * tolerance, Math.sqrt(2 * old.draws.length) * reading);
    return Math.abs(old.rounding) + (2 * both) / (2 * total);
  }

  test('repeated with the old syringe is never measured worse, whatever the shelf', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 60, noNaN: true }), shelf, (ml, syringes) => {
        const old = plan(ml, syringes);
        if (old === null) return;
        expect(twice(old)).toBeLessThanOrEqual(errorOf(old) + 1e-9);
      }),
      RUNS,
    );
  });

  test('is planned within two hundredths of the old dose’s error, or better, where one draw did before', () => {
    let better = 0;
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 60, noNaN: true }), shelf, (ml, syringes) => {
        const old = plan(ml, syringes);
        if (old === null || old.draws.length > 1) return;
        const doubled = plan(2 * ml, syringes);
        if (doubled === null) throw new Error('twice the old draw can be measured, yet no plan came');
        expect(errorOf(doubled)).toBeLessThanOrEqual(errorOf(old) + 0.02 + 1e-9);
        if (errorOf(doubled) < errorOf(old) - 1e-9) better += 1;
      }),
      RUNS,
    );
    expect(better).toBeGreaterThan(100);
  });
});

describe('the unit', () => {
  test('a weight read in pounds is dosed and judged as the same weight in kilograms', () => {
    fc.assert(
      fc.property(fc.double({ min: 4, max: 300, noNaN: true }), (lb) => {
        const [inPounds, inKilograms] = [pounds(lb), kilograms(massIn(pounds(lb), 'kg'))].map((mass) =>
          decideDose(
            makeAnimal({ lastWeight: null }),
            { ...makeHeld(), mass, uncertainty: grams(60) },
            makeJug(),
            NO_DOUBTS,
            makeWorld(),
          ),
        );
        expect(inPounds?.dose?.exact.value).toBeCloseTo(inKilograms?.dose?.exact.value ?? Number.NaN, 9);
        expect(inPounds?.dose?.plan.total.value).toBe(inKilograms?.dose?.plan.total.value);
        expect(inPounds?.cautions.map(({ code }) => code)).toEqual(
          inKilograms?.cautions.map(({ code }) => code),
        );
      }),
      RUNS,
    );
  });
});

describe('more uncertainty', () => {
  test('in the weight, the mix or the syringe never narrows the interval', () => {
    fc.assert(
      fc.property(kg, doubt, doubt, doubt, (weight, ofWeight, ofMix, more) => {
        const interval = (scale: number, mix: number): Dose['delivered'] => {
          const found = doseFor(
            makeHeld(weight, { uncertainty: grams(weight * 1000 * scale) }),
            makeRegimen(),
            makeJug({ relative: mix }),
            [makeSyringe(1, 0.01), makeSyringe(6, 0.1), makeSyringe(60, 1)],
          );
          if (found === null) throw new Error('this shelf measures from 0.2 mL up');
          return found.delivered;
        };
        const narrow = interval(ofWeight, ofMix);
        for (const wide of [interval(ofWeight + more, ofMix), interval(ofWeight, ofMix + more)]) {
          expect(wide.low).toBeLessThanOrEqual(narrow.low + 1e-12);
          expect(wide.high).toBeGreaterThanOrEqual(narrow.high - 1e-12);
        }
      }),
      RUNS,
    );
  });

  test('in a weighed syringe makes the same draw less sure', () => {
    const found = (spread: number): SyringePlan | null =>
      plan(3.3, [
        {
          ...makeSyringe(6, 0.1),
          measured: {
            mark: millilitres(3),
            bias: millilitres(0.02),
            biasUncertainty: millilitres(0.01),
            spread: millilitres(spread),
          },
        },
      ]);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.06, noNaN: true }),
        fc.double({ min: 0, max: 0.06, noNaN: true }),
        (spread, more) => {
          expect(found(spread + more)?.relative).toBeGreaterThanOrEqual(
            (found(spread)?.relative ?? 0) - 1e-12,
          );
        },
      ),
    );
  });
});

describe('the ceiling', () => {
  test('is never crossed by rounding, however near it lies to the target', () => {
    let capped = 0;
    fc.assert(
      fc.property(
        kg,
        mg,
        shelf,
        fc.double({ min: 1, max: 1.1, noNaN: true }),
        (weight, strength, on, room) => {
          const base = makeRegimen();
          const ceiling = { ...base.ceiling, value: base.target.value * room };
          const jug = makeJug({ strength: mgPerMl(strength) });
          const dose = doseFor(makeHeld(weight), { ...base, ceiling }, jug, on);
          if (dose === null) return;
          expect(dose.delivered.value).toBeLessThanOrEqual(ceiling.value * (1 + 1e-8));
          if (dose.plan.rounding < 0) capped += 1;
        },
      ),
      { numRuns: 3000 },
    );
    expect(capped).toBeGreaterThan(300);
  });
});
