import { describe, expect, test } from 'vitest';
import { doseFor, exactDose } from '../../../core/dosing/dose.ts';
import { massIn, pounds } from '../../../core/quantity/mass.ts';
import { showVolume } from '../../../core/quantity/show.ts';
import { activeFor, mgPerKg, mgPerMl, volumeHolding } from '../../../core/quantity/strength.ts';
import {
  CONCENTRATE,
  LEVAMISOLE_TABLE,
  MIXES,
  PACKET_MG,
  WORKED_EXAMPLE,
} from '../../oracles/levamisole-table.ts';
import { PRINTED_POINTS, READY_MADE, READY_MADE_CATTLE } from '../../oracles/ready-made-table.ts';
import { makeHeld } from '../make/held.ts';
import { makeJug } from '../make/jug.ts';
import { makeRegimen } from '../make/regimen.ts';
import { makeSyringe } from '../make/syringe.ts';

/** Relative distance from a printed check value. */
function off(got: number, expected: number): number {
  return Math.abs(got / expected - 1);
}

/** The exact dose through the same path an offer takes. */
function doseMl(lb: number, rate: number, strength: number): number {
  const base = makeRegimen();
  const regimen = { ...base, target: { ...base.target, value: rate } };
  const weight = makeHeld(massIn(pounds(lb), 'kg'));
  return exactDose(weight, regimen, makeJug({ strength: mgPerMl(strength) })).value;
}

describe('the levamisole table', () => {
  test.each(LEVAMISOLE_TABLE)('at $lb lb every column is met within 0.05 %', (row) => {
    expect(off(massIn(pounds(row.lb), 'kg'), row.kg)).toBeLessThan(0.0005);
    expect(off(activeFor(pounds(row.lb), mgPerKg(12)).value, row.mgAt12)).toBeLessThan(0.0005);
    const strength = (ml: number): number => PACKET_MG / ml;
    const columns = [
      [12, MIXES.quart.ml, row.at12Quart],
      [12, MIXES.ml1048.ml, row.at12Ml1048],
      [12, MIXES.twoQuarts.ml, row.at12TwoQuarts],
      [8, MIXES.quart.ml, row.at8Quart],
      [8, MIXES.twoQuarts.ml, row.at8TwoQuarts],
      [8, MIXES.gallon.ml, row.at8Gallon],
    ] as const;
    for (const [rate, ml, expected] of columns) {
      expect(off(doseMl(row.lb, rate, strength(ml)), expected)).toBeLessThan(0.0005);
    }
  });

  test('30 lb at 12 mg/kg from a quart is 3.302 mL, and is shown 3.3 mL on 0.1 mL marks', () => {
    const jug = makeJug({ strength: mgPerMl(PACKET_MG / MIXES.quart.ml) });
    const weight = makeHeld(WORKED_EXAMPLE.kg);
    expect(exactDose(weight, makeRegimen(), jug).value).toBeCloseTo(WORKED_EXAMPLE.ml, 4);
    const dose = doseFor(weight, makeRegimen(), jug, [makeSyringe(6, 0.1)]);
    if (dose === null) throw new Error('a 6 mL syringe measures 3.3 mL');
    expect(dose.exact.value.toFixed(3)).toBe('3.302');
    expect(dose.plan.total.value).toBe(3.3);
    expect(showVolume(dose.plan.total, dose.plan.syringe.graduation)).toBe(WORKED_EXAMPLE.shownOnTenthMarks);
  });

  test('the concentrate of 181.5 mg/mL gives the summary its 1 mL per 50 lb and 2 mL per 100 lb', () => {
    for (const [lb, ml] of [...CONCENTRATE.sheep, ...CONCENTRATE.cattle]) {
      expect(off(doseMl(lb, 8, CONCENTRATE.mgPerMl), ml)).toBeLessThan(0.0005);
    }
  });
});

describe('ready-made drenches', () => {
  test.each(READY_MADE)('$name $mgPerMl mg/mL at $mgPerKg mg/kg follows the table', (column) => {
    expect(column.rows).toHaveLength(9);
    for (const [lb, ml] of column.rows) {
      const got = volumeHolding(activeFor(pounds(lb), mgPerKg(column.mgPerKg)), mgPerMl(column.mgPerMl));
      expect(Math.abs(got.value - ml)).toBeLessThan(0.00051);
    }
  });

  test.each(READY_MADE_CATTLE)(
    '$name at $mgPerKg mg/kg follows the table for cattle',
    ({ rows, ...column }) => {
      expect(rows).toHaveLength(2);
      for (const [lb, ml] of rows) {
        expect(Math.abs(doseMl(lb, column.mgPerKg, column.mgPerMl) - ml)).toBeLessThan(0.00051);
      }
    },
  );

  test.each(PRINTED_POINTS)('$lb lb is $ml mL in print, within its rounding ($source)', (point) => {
    expect(off(doseMl(point.lb, point.mgPerKg, point.mgPerMl), point.ml)).toBeLessThan(point.within);
  });
});
