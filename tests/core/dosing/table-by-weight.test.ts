import { describe, expect, test } from 'vitest';
import { doseTable, tableWeights } from '../../../core/dosing/dose-table.ts';
import { SYRINGE_CATALOGUE } from '../../../core/dosing/syringe.ts';
import { kilograms, massIn, pounds } from '../../../core/quantity/mass.ts';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import { LEVAMISOLE_TABLE, MIXES, PACKET_MG } from '../../oracles/levamisole-table.ts';
import { makeRegimen } from '../make/regimen.ts';
import { makeSyringe } from '../make/syringe.ts';

const QUART = mgPerMl(PACKET_MG / MIXES.quart.ml);
const regimen = makeRegimen();

describe('the weights of a table', () => {
  test.each([
    ['goat', 'kg'],
    ['goat', 'lb'],
    ['sheep', 'lb'],
    ['cattle', 'kg'],
    ['cattle', 'lb'],
  ] as const)('for %s in %s rise by no more than a tenth from 5 kg up, in round numbers', (species, unit) => {
    const weights = tableWeights(species, unit).map((weight) => massIn(weight, unit));
    expect(weights.length).toBeGreaterThan(20);
    expect(weights.length).toBeLessThan(70);
    for (const [i, weight] of weights.entries()) {
      const before = weights[i - 1];
      if (before === undefined) continue;
      expect(weight).toBeGreaterThan(before);
      expect(weight - before).toBeLessThanOrEqual(Math.max(0.1 * before, unit === 'kg' ? 0.5 : 1) + 1e-9);
      expect(weight * 2).toBeCloseTo(Math.round(weight * 2), 6);
    }
  });
});

describe('a dose table', () => {
  test('meets the levamisole table to half a mark of the syringe it names', () => {
    const rows = doseTable(
      regimen,
      QUART,
      SYRINGE_CATALOGUE,
      LEVAMISOLE_TABLE.map(({ lb }) => pounds(lb)),
    );
    expect(rows).toHaveLength(LEVAMISOLE_TABLE.length);
    for (const [i, { plan }] of rows.entries()) {
      const exact = LEVAMISOLE_TABLE[i]?.at12Quart ?? Number.NaN;
      if (plan === null) throw new Error(`no syringe for row ${i}`);
      expect(Math.abs(plan.total.value - exact)).toBeLessThanOrEqual(
        plan.syringe.graduation.value / 2 + 1e-3,
      );
    }
  });

  test('gives nobody who reads the nearest row more than the ceiling, even where the rows lie far apart', () => {
    const far = [2, 3, 5, 9, 16, 30, 55, 100].map(kilograms);
    for (const weights of [far, tableWeights('goat', 'kg')]) {
      for (const { delivered } of doseTable(regimen, QUART, SYRINGE_CATALOGUE, weights)) {
        if (delivered === null) continue;
        expect(delivered.lightest).toBeLessThanOrEqual(regimen.ceiling.value + 1e-9);
        expect(delivered.heaviest).toBeLessThanOrEqual(delivered.lightest);
      }
    }
  });

  test('stays within an eighth of the target on its own weights, from the lightest reader to the heaviest', () => {
    const target = regimen.target.value;
    for (const { delivered } of doseTable(regimen, QUART, SYRINGE_CATALOGUE, tableWeights('goat', 'kg'))) {
      expect(delivered?.lightest).toBeLessThan(target * 1.125);
      expect(delivered?.heaviest).toBeGreaterThan(target * 0.875);
    }
  });

  test('has an empty row where no syringe on hand measures the dose', () => {
    const [light, , heavy] = doseTable(regimen, QUART, [makeSyringe(12, 0.2)], [4, 38, 40].map(kilograms));
    expect(light).toMatchObject({ plan: null, delivered: null });
    expect(heavy?.plan?.total.value).toBe(9.8);
  });
});
