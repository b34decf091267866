import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { doseFor } from '../../../core/dosing/dose.ts';
import { type DoseCard, doseCard } from '../../../core/dosing/dose-card.ts';
import type { Syringe } from '../../../core/dosing/syringe.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { makeHeld } from '../make/held.ts';
import { makeJug } from '../make/jug.ts';
import { makeRegimen } from '../make/regimen.ts';
import { makeSyringe } from '../make/syringe.ts';

/** What a small farm has: no 1 mL syringe and nothing above 12 mL. */
const SHELF = [
  { ...makeSyringe(3, 0.1), id: 'syringe-3-by-0.1' },
  { ...makeSyringe(6, 0.1), id: 'syringe-6-by-0.1' },
  { ...makeSyringe(12, 0.2), id: 'syringe-12-by-0.2' },
];

function card(kg: number, doubtGrams: number, mixedHere = true, shelf: readonly Syringe[] = SHELF): DoseCard {
  const input = {
    weight: makeHeld(kg, { uncertainty: grams(doubtGrams) }),
    regimen: makeRegimen(),
    jug: makeJug(),
  };
  const dose = doseFor(input.weight, input.regimen, input.jug, shelf);
  if (dose === null) throw new Error(`nothing here measures for ${kg} kg`);
  return doseCard(input, dose, shelf, mixedHere);
}

describe('the card and its advice, animal by animal', () => {
  test('a kid of 4 kg: the syringe is most of the doubt; mix double, or take a 1 mL syringe', () => {
    const { leads, parts, advice, passesCeiling } = card(4, 30);
    expect(leads).toBe('syringe');
    expect(parts.find(({ of }) => of === 'syringe')?.share).toBeGreaterThan(0.9);
    const double = advice.find(({ change }) => change === 'double-dilution');
    expect(double?.then.plan.total.value).toBe(1.9);
    const other = advice.find(({ change }) => change === 'other-syringe');
    expect(other?.then.plan.syringe.capacity.value).toBe(1);
    expect(passesCeiling).toBe(false);
  });

  test('a kid of 4 kg dosed from a bottle: nobody dilutes that, only another syringe helps', () => {
    expect(card(4, 30, false).advice.map(({ change }) => change)).toEqual(['other-syringe']);
  });

  test('a kid of 13 kg: its syringe fits the dose, and there is nothing to say', () => {
    expect(card(13, 40)).toMatchObject({ advice: [], passesCeiling: false });
  });

  test('a buck of 90 kg: a larger syringe does it in one draw, and mixing double is no advice', () => {
    const { advice } = card(90, 120);
    expect(advice.map(({ change }) => change)).toEqual(['fewer-draws']);
    expect(advice[0]?.then.plan.draws).toHaveLength(1);
    expect(advice[0]?.then.plan.syringe.capacity.value).toBe(35);
  });

  test('a weight on a coarse scale: the weight leads, and a surer one comes first', () => {
    const { leads, advice } = card(13, 600);
    expect(leads).toBe('weight');
    expect(advice[0]?.change).toBe('surer-weight');
  });

  test('a weight so doubtful that the ceiling may be passed says so', () => {
    expect(card(13, 3000).passesCeiling).toBe(true);
  });
});

describe('the card', () => {
  const kg = fc.double({ min: 4, max: 140, noNaN: true });
  const doubt = fc.double({ min: 0, max: 0.06, noNaN: true });

  test('has the shares of the dose’s own budget, the largest of them in the lead', () => {
    fc.assert(
      fc.property(kg, doubt, (weight, off) => {
        const shelf = [makeSyringe(1, 0.01), ...SHELF, makeSyringe(60, 1)];
        const input = {
          weight: makeHeld(weight, { uncertainty: grams(1000 * weight * off) }),
          regimen: makeRegimen(),
          jug: makeJug(),
        };
        const dose = doseFor(input.weight, input.regimen, input.jug, shelf);
        if (dose === null) throw new Error('the shelf measures all of these');
        const { parts, leads } = doseCard(input, dose, shelf, true);
        for (const [i, part] of parts.entries())
          expect(part.share).toBeCloseTo(dose.budget.shares[i] ?? 0, 6);
        const most = Math.max(...parts.map(({ share }) => share));
        expect(parts.find(({ of }) => of === leads)?.share).toBe(most);
        const whole = Math.hypot(...parts.map(({ moves }) => moves));
        expect(whole).toBeCloseTo(2 * dose.budget.relative * dose.delivered.value, 6);
      }),
    );
  });

  test('never advises what leaves the dose farther from its target, nor more draws', () => {
    let said = 0;
    fc.assert(
      fc.property(kg, doubt, (weight, off) => {
        const input = {
          weight: makeHeld(weight, { uncertainty: grams(1000 * weight * off) }),
          regimen: makeRegimen(),
          jug: makeJug(),
        };
        const dose = doseFor(input.weight, input.regimen, input.jug, SHELF);
        if (dose === null) return;
        const far = ({ delivered: { low, high } }: typeof dose): number => Math.max(high - 12, 12 - low) / 12;
        for (const { change, then } of doseCard(input, dose, SHELF, true).advice) {
          said += 1;
          expect(then.plan.draws.length).toBeLessThanOrEqual(dose.plan.draws.length);
          if (change === 'fewer-draws') {
            expect(then.plan.draws.length).toBeLessThan(dose.plan.draws.length);
            expect(far(then)).toBeLessThanOrEqual(far(dose) + 0.02 + 1e-12);
          } else expect(far(then)).toBeLessThanOrEqual(far(dose) - 0.01 + 1e-12);
        }
      }),
    );
    expect(said).toBeGreaterThan(50);
  });
});
