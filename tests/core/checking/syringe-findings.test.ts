import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Deliveries, divisionFor, syringeFindings } from '../../../core/checking/syringe-findings.ts';
import { syringeTolerance } from '../../../core/dosing/syringe.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { celsius } from '../../../core/quantity/temperature.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { WEIGHED_SYRINGE } from '../../oracles/weighed-syringe.ts';
import { makeSyringe } from '../make/syringe.ts';

const WORKED: Deliveries = {
  syringe: makeSyringe(WEIGHED_SYRINGE.capacityMl, WEIGHED_SYRINGE.graduationMl),
  mark: millilitres(WEIGHED_SYRINGE.markMl),
  temperature: celsius(WEIGHED_SYRINGE.celsius),
  division: grams(WEIGHED_SYRINGE.divisionGrams),
  delivered: WEIGHED_SYRINGE.grams.map(grams),
  leftOut: 0,
};

const all = (each: number, over: Partial<Deliveries> = {}): Deliveries => ({
  ...WORKED,
  division: grams(0.01),
  delivered: Array.from({ length: 10 }, () => grams(each)),
  ...over,
});

describe('ten weighed deliveries', () => {
  test('give the bias, spread and uncertainty worked through by hand', () => {
    const found = syringeFindings(WORKED);
    expect(found.bias.value).toBeCloseTo(WEIGHED_SYRINGE.biasMl, 5);
    expect(found.spread.value).toBeCloseTo(WEIGHED_SYRINGE.spreadMl, 5);
    expect(found.biasUncertainty.value).toBeCloseTo(WEIGHED_SYRINGE.biasUncertaintyMl, 4);
    expect(found.allowed.value).toBeCloseTo(WEIGHED_SYRINGE.allowedMl, 9);
    expect(found.volumes).toHaveLength(10);
  });

  test('that never differ still spread by what the scale cannot see', () => {
    expect(syringeFindings(all(3)).spread.value).toBeCloseTo((0.01 / Math.sqrt(6)) * 1.002852, 6);
  });

  // 2.99147 g of water at 20 degC are 3 mL; 4 % either way is allowed from half the capacity up.
  test.each([
    [2.9915, 'within'],
    [2.9915 + 0.1, 'within'],
    [2.9915 + 0.12, 'unclear'],
    [2.9915 - 0.12, 'unclear'],
    [2.9915 + 0.15, 'outside'],
    [2.9915 - 0.15, 'outside'],
  ] as const)('of %d g each at 3 mL are %s', (each, verdict) => {
    expect(syringeFindings(all(each)).verdict).toBe(verdict);
  });

  test('with some left out in between are known less well', () => {
    const u = (leftOut: number): number => syringeFindings(all(3, { leftOut })).biasUncertainty.value;
    expect(u(3)).toBeGreaterThan(u(0));
  });

  test('in another order give the same figures', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...WEIGHED_SYRINGE.grams], { minLength: 10, maxLength: 10 }),
        (order) => {
          const found = syringeFindings({ ...WORKED, delivered: order.map(grams) });
          expect(found.bias.value).toBeCloseTo(WEIGHED_SYRINGE.biasMl, 5);
          expect(found.spread.value).toBeCloseTo(WEIGHED_SYRINGE.spreadMl, 5);
        },
      ),
    );
  });
});

describe('the division that would do', () => {
  // Half of 0.12, 0.24, 2.4, 0.025 and 0.4 mL, down to the next 1, 2 or 5.
  test.each([
    [6, 0.1, 3, 0.05],
    [12, 0.2, 6, 0.1],
    [60, 1, 60, 1],
    [1, 0.01, 0.5, 0.01],
    [20, 1, 10, 0.2],
  ])('for %d mL by %d at %d mL is %d g', (capacity, graduation, mark, expected) => {
    expect(divisionFor(makeSyringe(capacity, graduation), millilitres(mark)).value).toBe(expected);
  });

  test('is never more than half of what is allowed, and never less than a fifth of it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(1, 3, 6, 12, 20, 35, 60),
        fc.integer({ min: 1, max: 60 }),
        (capacity, step) => {
          const syringe = makeSyringe(capacity, capacity / 60);
          const mark = millilitres((capacity * step) / 60);
          const share = divisionFor(syringe, mark).value / syringeTolerance(syringe, mark).value;
          expect(share).toBeLessThanOrEqual(0.5 + 1e-9);
          expect(share).toBeGreaterThan(0.2 - 1e-9);
        },
      ),
    );
  });
});
