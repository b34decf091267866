import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Syringe, syringeTolerance } from '../../../core/dosing/syringe.ts';
import { planSyringe, type SyringePlan } from '../../../core/dosing/syringe-plan.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { LARGEST_CAPACITY_OVER_VOLUME } from '../../oracles/syringe-tolerance.ts';
import { makeSyringe } from '../make/syringe.ts';

function plan(exactMl: number, syringes: readonly Syringe[], mostMl = exactMl * 1.5): SyringePlan | null {
  return planSyringe(millilitres(exactMl), millilitres(mostMl), syringes);
}

/** Capacity in whole graduations, so that every syringe of the shelf is one that could exist. */
const syringe = fc
  .record({
    graduation: fc.constantFrom(0.01, 0.05, 0.1, 0.2, 0.5, 1),
    marks: fc.integer({ min: 10, max: 120 }),
  })
  .map(({ graduation, marks }) => makeSyringe(Number((graduation * marks).toFixed(2)), graduation));
const shelf = fc.array(syringe, { minLength: 1, maxLength: 6 });
const dose = fc.double({ min: 0.05, max: 120, noNaN: true });

/**
 * The error of the best way there is, tried out one by one: every syringe, one to three draws, and every total of
 * marks up to the ceiling within a mark of the exact dose. Written from the rules alone. `slack` moves both limits a
 * hair, since a draw exactly at one may fall on either side of it in binary.
 */
function bestErrorByTrying(
  exact: number,
  most: number,
  syringes: readonly Syringe[],
  slack: number,
): number | null {
  let best: number | null = null;
  for (const one of syringes) {
    const mark = one.graduation.value;
    const capacityMarks = Math.round(one.capacity.value / mark);
    const low = Math.floor(exact / mark + 1e-9);
    const candidates = [low, low + 1].filter((marks) => marks * mark <= most * (1 + slack));
    const nearest = candidates.sort(
      (a, b) => Math.abs(a * mark - exact) - Math.abs(b * mark - exact) || b - a,
    )[0];
    if (nearest === undefined) continue;
    for (const count of [1, 2, 3]) {
      if (count > nearest || nearest > count * capacityMarks) continue;
      const draws = Array.from({ length: count }, (_, i) => Math.floor((nearest + i) / count) * mark);
      const off = draws.map((draw) => syringeTolerance(one, millilitres(draw)).value);
      if (draws.some((draw, i) => (off[i] ?? 0) > 0.1 * draw * (1 + slack))) continue;
      const total = nearest * mark;
      const sum = off.reduce((a, b) => a + b, 0) / Math.sqrt(3);
      const reading = (mark / 2 / Math.sqrt(3)) * Math.sqrt(count);
      const error = Math.abs(total / exact - 1) + (2 * Math.hypot(sum, reading)) / total;
      if (best === null || error < best) best = error;
    }
  }
  return best;
}

describe('the syringe plan', () => {
  test('comes within two hundredths of the smallest error there is among all syringes and up to three draws', () => {
    let found = 0;
    fc.assert(
      fc.property(dose, shelf, fc.constantFrom(1, 1.02, 1.1, 1.5), (exact, syringes, room) => {
        const got = plan(exact, syringes, exact * room);
        const [strict, loose] = [-1e-8, 1e-8].map((slack) =>
          bestErrorByTrying(exact, exact * room, syringes, slack),
        );
        if (got === null) {
          expect(strict).toBeNull();
          return;
        }
        found += 1;
        const error = Math.abs(got.rounding) + 2 * got.relative;
        expect(error).toBeGreaterThanOrEqual((loose ?? Number.POSITIVE_INFINITY) - 1e-6);
        expect(error).toBeLessThanOrEqual((strict ?? Number.POSITIVE_INFINITY) + 0.02 + 1e-6);
      }),
      { numRuns: 2000 },
    );
    expect(found).toBeGreaterThan(200);
  });

  test('never rounds past the ceiling, and never by more than half a mark upwards', () => {
    fc.assert(
      fc.property(dose, shelf, fc.double({ min: 1, max: 1.5, noNaN: true }), (exact, syringes, room) => {
        const got = plan(exact, syringes, exact * room);
        if (got === null) return;
        expect(got.total.value).toBeLessThanOrEqual(exact * room + 1e-8);
        expect(got.total.value - exact).toBeLessThanOrEqual(got.syringe.graduation.value / 2 + 1e-8);
      }),
      { numRuns: 1000 },
    );
  });

  test('every draw is on a mark, fits the syringe, and they add to the total, largest first', () => {
    fc.assert(
      fc.property(dose, shelf, (exact, syringes) => {
        const got = plan(exact, syringes);
        if (got === null) return;
        const mark = got.syringe.graduation.value;
        const marks = got.draws.map((draw) => draw.value / mark);
        for (const [i, each] of marks.entries()) {
          expect(Math.abs(each - Math.round(each))).toBeLessThan(1e-6);
          expect(got.draws[i]?.value).toBeLessThanOrEqual(got.syringe.capacity.value + 1e-9);
          expect(each).toBeLessThanOrEqual((marks[i - 1] ?? each) + 1e-9);
        }
        expect(got.draws.length).toBeLessThanOrEqual(3);
        expect(got.draws.reduce((sum, draw) => sum + draw.value, 0)).toBeCloseTo(got.total.value, 6);
      }),
      { numRuns: 1000 },
    );
  });

  test('one more syringe on the shelf never makes it worse by more than two hundredths', () => {
    fc.assert(
      fc.property(dose, shelf, syringe, (exact, syringes, extra) => {
        const before = plan(exact, syringes);
        const after = plan(exact, [...syringes, extra]);
        if (before === null) return;
        if (after === null) throw new Error('a dose that could be measured no longer can');
        const error = (one: SyringePlan): number => Math.abs(one.rounding) + 2 * one.relative;
        expect(error(after)).toBeLessThanOrEqual(error(before) + 0.02 + 1e-8);
      }),
    );
  });

  test('the order of the shelf does not change how well the dose is measured', () => {
    fc.assert(
      fc.property(dose, shelf, (exact, syringes) => {
        const [there, back] = [plan(exact, syringes), plan(exact, [...syringes].reverse())];
        expect(there?.draws.length).toBe(back?.draws.length);
        expect((there?.relative ?? 0) + Math.abs(there?.rounding ?? 0)).toBeCloseTo(
          (back?.relative ?? 0) + Math.abs(back?.rounding ?? 0),
          6,
        );
      }),
    );
  });
});

describe('a dose no syringe can measure', () => {
  test.each([
    [0.5, [12, 0.2]],
    [0.04, [1, 0.01]],
    [2, [20, 1]],
    [190, [60, 1]],
  ] as const)('%d mL from a syringe of %j gives no plan', (exact, [capacity, mark]) => {
    expect(plan(exact, [makeSyringe(capacity, mark)])).toBeNull();
  });

  test('is one whose smallest mark passes the ceiling', () => {
    expect(plan(0.9, [makeSyringe(3, 1)], 0.95)).toBeNull();
  });

  test('is any dose from an empty shelf', () => {
    expect(plan(3.3, [])).toBeNull();
  });

  test('is a dose of nothing', () => {
    expect(planSyringe(millilitres(0), millilitres(0), [makeSyringe(3, 0.1)])).toBeNull();
  });
});

describe('the choice', () => {
  test('of 3.302 mL between 6 mL by 0.1 and 12 mL by 0.2 is 3.3 mL from the 6 mL syringe', () => {
    const got = plan(3.30199, [makeSyringe(12, 0.2), makeSyringe(6, 0.1)]);
    expect(got?.syringe.capacity.value).toBe(6);
    expect(got?.total.value).toBe(3.3);
    expect(got?.draws).toHaveLength(1);
  });

  test('of 9.7 mL with only a 6 mL syringe is two draws that add up', () => {
    const got = plan(9.7062, [makeSyringe(6, 0.1)]);
    expect(got?.draws.map((draw) => draw.value)).toEqual([4.9, 4.8]);
    expect(got?.total.value).toBe(9.7);
  });

  test('keeps near the pharmacopoeia’s rule of at most three times the volume, when such a syringe is there', () => {
    for (const exact of [0.4, 1.1, 2.2, 3.3, 5.5, 9.7, 22]) {
      const shelfOfAll = [1, 3, 6, 12, 20, 35, 60].map((capacity) => makeSyringe(capacity, capacity / 60));
      const got = plan(exact, shelfOfAll);
      const smallestDraw = Math.min(...(got?.draws.map((draw) => draw.value) ?? [0]));
      expect(got?.syringe.capacity.value).toBeLessThanOrEqual(
        LARGEST_CAPACITY_OVER_VOLUME * smallestDraw + 1e-9,
      );
    }
  });
});
