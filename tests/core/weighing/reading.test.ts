import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { grams } from '../../../core/quantity/mass.ts';
import { scaleUncertainty } from '../../../core/weighing/reading.ts';

describe('what a scale alone leaves in doubt', () => {
  // NIST Handbook 44 class III, maintenance: steps at 500, 2,000 and 4,000 divisions; 1, 2, 3 and 5 divisions.
  test.each([
    [25_000, 1],
    [25_050, 2],
    [100_000, 2],
    [100_050, 3],
    [200_000, 3],
    [200_050, 5],
  ])('%d g in steps of 50 g: %d divisions, rectangular', (load, divisions) => {
    expect(scaleUncertainty(grams(load), grams(50)).value).toBeCloseTo((divisions * 50) / Math.sqrt(3), 9);
  });

  test('never shrinks as the load grows', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.constantFrom(1, 20, 50, 100, 500),
        (load, more, division) => {
          const [less, greater] = [load, load + more].map((one) =>
            scaleUncertainty(grams(one), grams(division)),
          );
          expect(greater?.value).toBeGreaterThanOrEqual(less?.value ?? Number.POSITIVE_INFINITY);
        },
      ),
    );
  });
});
