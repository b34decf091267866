import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawTolerance, type Syringe } from '../../../core/dosing/syringe.ts';
import { planSyringe } from '../../../core/dosing/syringe-plan.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { makeSyringe } from '../make/syringe.ts';

/** A way to draw, tried out: the marks of each draw, and the error it comes to. */
interface Way {
  readonly syringe: Syringe;
  readonly draws: number;
  readonly error: number;
}

/** How total errors may lie apart and still count as equal: the project's own decision. */
const AS_GOOD = 0.02;

/** Every way to part a number of marks into one to three draws, even or not, largest first. */
function partings(marks: number, most: number): number[][] {
  const all: number[][] = [];
  for (let a = 1; a <= Math.min(marks, most); a += 1) {
    if (a === marks) all.push([a]);
    for (let b = 1; b <= Math.min(a, marks - a); b += 1) {
      const c = marks - a - b;
      if (c === 0) all.push([a, b]);
      else if (c <= b) all.push([a, b, c]);
    }
  }
  return all;
}

/** Everything the rules allow, one by one: the nearest mark, or the last below the ceiling, parted in every way. */
function everyWay(exact: number, most: number, shelf: readonly Syringe[], slack: number): Way[] {
  const ways: Way[] = [];
  for (const syringe of shelf) {
    const mark = syringe.graduation.value;
    const nearest = Math.floor(exact / mark + 0.5 + 1e-9);
    const marks = Math.min(nearest, Math.floor(most / mark + 1e-9));
    for (const parts of partings(marks, Math.round(syringe.capacity.value / mark))) {
      const off = parts.map((part) => drawTolerance(syringe, millilitres(part * mark)).value);
      if (parts.some((part, i) => (off[i] ?? 0) > 0.1 * part * mark * (1 + slack))) continue;
      const total = marks * mark;
      const tolerance = off.reduce((a, b) => a + b, 0) / Math.sqrt(3);
      const reading = (mark / 2 / Math.sqrt(3)) * Math.sqrt(parts.length);
      const error = Math.abs(total / exact - 1) + (2 * Math.hypot(tolerance, reading)) / total;
      ways.push({ syringe, draws: parts.length, error });
    }
  }
  return ways;
}

const syringe = fc
  .record({
    graduation: fc.constantFrom(0.05, 0.1, 0.2, 0.5, 1),
    marks: fc.integer({ min: 8, max: 36 }),
    bias: fc.option(fc.double({ min: 0, max: 0.02, noNaN: true })),
  })
  .map(({ graduation, marks, bias }): Syringe => {
    const made = makeSyringe(Number((graduation * marks).toFixed(2)), graduation);
    const mark = millilitres(made.capacity.value / 2);
    const part = millilitres((bias ?? 0) * mark.value);
    return bias === null
      ? made
      : { ...made, measured: { mark, bias: part, biasUncertainty: part, spread: part } };
  });
const shelf = fc.array(syringe, { minLength: 1, maxLength: 6 });

describe('against every way there is to draw a dose', () => {
  test('none has a smaller error by more than two hundredths, and of those as good none has fewer draws', () => {
    let found = 0;
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 60, noNaN: true }),
        shelf,
        fc.constantFrom(1, 1.05, 1.5),
        (exact, syringes, room) => {
          const got = planSyringe(millilitres(exact), millilitres(exact * room), syringes);
          const ways = everyWay(exact, exact * room, syringes, 1e-9);
          expect(got === null).toBe(ways.length === 0);
          if (got === null) return;
          found += 1;
          const least = Math.min(...ways.map(({ error }) => error));
          const error = Math.abs(got.rounding) + 2 * got.relative;
          expect(error).toBeGreaterThanOrEqual(least - 1e-9);
          expect(error).toBeLessThanOrEqual(least + AS_GOOD + 1e-9);
          const asGood = ways.filter((way) => way.error <= least + AS_GOOD - 1e-9);
          expect(got.draws.length).toBeLessThanOrEqual(Math.min(...asGood.map(({ draws }) => draws)));
        },
      ),
      { numRuns: 600 },
    );
    expect(found).toBeGreaterThan(250);
  });

  test('3.3 mL from a 3 mL syringe is 1.7 and 1.6, not 3 and 0.3, whose 0.3 may be 17 % off', () => {
    const three = makeSyringe(3, 0.1);
    const got = planSyringe(millilitres(3.3), millilitres(4.95), [three]);
    expect(got?.draws.map(({ value }) => value)).toEqual([1.7, 1.6]);
    // 1.5 % of 3 mL and 2 % of 0.3 mL: 0.051 mL.
    expect(drawTolerance(three, millilitres(0.3)).value / 0.3).toBeCloseTo(0.17, 12);
  });
});
