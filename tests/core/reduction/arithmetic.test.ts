import { describe, expect, test } from 'vitest';
import { combinedEfficacy, efficacyBand, survivors } from '../../../core/reduction/combination.ts';
import { controlledReductions } from '../../../core/reduction/control-group.ts';

describe('medicines given one after the other', () => {
  test('leave 200, 60 and 24 of 1,000 at 80, 70 and 60 %', () => {
    const left = survivors(1000, [0.8, 0.7, 0.6]);
    for (const [i, printed] of [200, 60, 24].entries()) expect(left[i]).toBeCloseTo(printed, 9);
    expect(combinedEfficacy([0.8, 0.7, 0.6])).toBeCloseTo(0.976, 12);
  });

  test.each([
    [[0.9, 0.9], 0.99],
    [[0.8, 0.8], 0.96],
    [[0.95, 0.5], 0.975],
    [[], 0],
  ])('%j kill %d', (efficacies, together) => {
    expect(combinedEfficacy(efficacies)).toBeCloseTo(together, 12);
  });

  test('are refused with a share beyond one', () => {
    expect(() => combinedEfficacy([1.2])).toThrow(RangeError);
  });
});

test.each([
  [1, 'works'],
  [0.95, 'works'],
  [0.949, 'resistant'],
  [0.8, 'resistant'],
  [0.799, 'much-resistance'],
  [0.5, 'much-resistance'],
  [0.499, 'not-alone'],
  [-2, 'not-alone'],
] as const)('an efficacy of %d: %s', (efficacy, band) => {
  expect(efficacyBand(efficacy)).toBe(band);
});

describe('the four published reductions', () => {
  test('come apart where untreated animals fell too', () => {
    const found = controlledReductions({
      treatedBefore: 400,
      treatedAfter: 100,
      untreatedBefore: 400,
      untreatedAfter: 200,
    });
    expect(found).toEqual({
      againstBoth: 0.5,
      againstUntreatedAfter: 0.5,
      againstOwnBefore: 0.75,
      againstUntreatedBefore: 0.75,
    });
  });

  test('are not known where the divisor is nothing', () => {
    const none = { treatedBefore: 0, treatedAfter: 0, untreatedBefore: 0, untreatedAfter: 0 };
    expect(Object.values(controlledReductions(none))).toEqual([null, null, null, null]);
  });
});
