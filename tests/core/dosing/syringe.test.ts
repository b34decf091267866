import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SYRINGE_CATALOGUE, syringeById, syringeTolerance } from '../../../core/dosing/syringe.ts';
import { stepsIn } from '../../../core/quantity/round.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { TOLERANCE_CASES } from '../../oracles/syringe-tolerance.ts';
import { makeSyringe } from '../make/syringe.ts';

describe('syringe tolerance', () => {
  test.each(TOLERANCE_CASES)(
    '$drawnMl mL from a $nominalMl mL syringe may be off by $plusMinusMl mL',
    (row) => {
      const got = syringeTolerance(makeSyringe(row.nominalMl, 0.1), millilitres(row.drawnMl)).value;
      expect(got).toBeCloseTo(row.plusMinusMl, 9);
    },
  );

  test('within one syringe and one half of it, a larger draw is never less well known as a share', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SYRINGE_CATALOGUE),
        fc.double({ min: 0.02, max: 0.999, noNaN: true }),
        fc.double({ min: 0.02, max: 0.999, noNaN: true }),
        (syringe, a, b) => {
          const [low, high] = a < b ? [a, b] : [b, a];
          const half = syringe.capacity.value / 2;
          const share = (ml: number): number => syringeTolerance(syringe, millilitres(ml)).value / ml;
          expect(share(high * half)).toBeLessThanOrEqual(share(low * half) * (1 + 1e-9));
          expect(share(half + high * half)).toBeLessThanOrEqual(share(half + low * half) * (1 + 1e-9));
        },
      ),
    );
  });
});

describe('the syringe catalogue', () => {
  test('ids are unique and each is found by its own', () => {
    expect(new Set(SYRINGE_CATALOGUE.map(({ id }) => id)).size).toBe(SYRINGE_CATALOGUE.length);
    for (const syringe of SYRINGE_CATALOGUE) expect(syringeById(syringe.id)).toBe(syringe);
    expect(syringeById('no-such')).toBeUndefined();
  });

  test.each(SYRINGE_CATALOGUE)('$id has its last mark at its capacity', ({ capacity, graduation }) => {
    expect(stepsIn(capacity.value, graduation.value, 'down') * graduation.value).toBeCloseTo(
      capacity.value,
      9,
    );
  });

  test('names are generic: a capacity and the word syringe', () => {
    for (const { name } of SYRINGE_CATALOGUE) expect(name).toMatch(/^\d+ mL syringe$/);
  });
});
