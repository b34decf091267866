import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type BnbCounts, bnbChances, bnbLimits, forecastAt } from '../../../core/reduction/bnb.ts';
import { tailsAt } from '../../../core/reduction/bnb-law.ts';
import { likeliestShape } from '../../../core/reduction/dispersion.ts';
import { BETA_NEGATIVE_BINOMIAL, EPGS, VIGNETTE } from '../../oracles/reduction.ts';

const { goats } = BETA_NEGATIVE_BINOMIAL;

function vignetteWith(shapes: readonly [number, number]): BnbCounts {
  return {
    eggsBefore: 132,
    eggsAfter: 16,
    animalsBefore: 10,
    animalsAfter: 10,
    shapeBefore: shapes[0],
    shapeAfter: shapes[1],
  };
}

describe('the beta-negative-binomial', () => {
  const { law, upTo3, from3, at0 } = BETA_NEGATIVE_BINOMIAL;

  test('has the tails computed to 30 digits', () => {
    expect(tailsAt(law, 3).atMost).toBeCloseTo(upTo3, 12);
    expect(tailsAt(law, 3).atLeast).toBeCloseTo(from3, 12);
    expect(tailsAt(law, 0).atMost).toBeCloseTo(at0, 12);
    expect(tailsAt(law, 0).atLeast).toBe(1);
  });

  test('has two tails that share one number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), (eggs) => {
        const [here, next] = [tailsAt(law, eggs), tailsAt(law, eggs + 1)];
        expect(here.atMost + next.atLeast).toBeCloseTo(1, 6);
      }),
    );
  });
});

describe('ten goats with 200 eggs before and none after', () => {
  const counts = {
    eggsBefore: goats.eggsBefore,
    eggsAfter: 0,
    animalsBefore: goats.animals,
    animalsAfter: goats.animals,
    shapeBefore: goats.shapes[0],
    shapeAfter: goats.shapes[1],
  };

  test('are foretold as computed', () => {
    const forecast = forecastAt(counts, goats.efficacy);
    expect(forecast?.p).toBeCloseTo(goats.p, 12);
    expect(forecast?.pVariance).toBeCloseTo(goats.pVariance, 15);
    expect(forecast?.mean).toBeCloseTo(goats.mean, 10);
    expect(forecast?.variance).toBeCloseTo(goats.variance, 12);
    expect(forecast?.law.alpha).toBeCloseTo(goats.alpha, 6);
    expect(forecast?.law.beta).toBeCloseTo(goats.beta, 6);
    expect(forecast?.law.shape).toBeCloseTo(goats.shape, 12);
  });

  test('have the chance computed', () => {
    const chances = bnbChances(counts, 0.99, goats.efficacy);
    expect((chances?.susceptibility ?? 0) / goats.susceptibility).toBeCloseTo(1, 8);
    expect(chances?.resistance).toBe(1);
  });
});

describe('the vignette', () => {
  const { expected, lowest } = VIGNETTE;

  test.each([
    ['adjusted shapes', VIGNETTE.adjustedShapes, VIGNETTE.likeliestShapes, 8],
    ['shape before for both', [VIGNETTE.adjustedShapes[0], VIGNETTE.adjustedShapes[0]], VIGNETTE.oneShape, 8],
    ['shapes of one', [1, 1], VIGNETTE.unitShapes, 10],
  ] as const)('has the chances printed: %s', (_name, shapes, printed, decimals) => {
    const chances = bnbChances(vignetteWith([shapes[0], shapes[1]]), expected, lowest);
    expect(chances?.resistance).toBeCloseTo(printed.resistance, decimals);
    expect(chances?.susceptibility).toBeCloseTo(printed.susceptibility, decimals);
  });

  test('has the likeliest shapes to the tolerance of the program that printed them', () => {
    expect(likeliestShape(VIGNETTE.before) / VIGNETTE.shapes[0]).toBeCloseTo(1, 3);
    expect(likeliestShape(VIGNETTE.after) / VIGNETTE.shapes[1]).toBeCloseTo(1, 3);
  });
});

test('the sheep have the chances printed for known shapes, however small', () => {
  const chances = bnbChances(
    {
      eggsBefore: EPGS.eggs.before,
      eggsAfter: EPGS.eggs.after,
      animalsBefore: 14,
      animalsAfter: 14,
      shapeBefore: EPGS.knownShapes.shapes[0],
      shapeAfter: EPGS.knownShapes.shapes[1],
    },
    0.99,
    0.9,
  );
  expect((chances?.resistance ?? 0) / EPGS.knownShapes.resistance).toBeCloseTo(1, 8);
  expect(chances?.susceptibility).toBeCloseTo(EPGS.knownShapes.susceptibility, 9);
});

describe('the limits found by turning the chances round', () => {
  const counts = fc.record({
    eggsBefore: fc.integer({ min: 20, max: 800 }),
    eggsAfter: fc.integer({ min: 0, max: 60 }),
    animals: fc.integer({ min: 3, max: 20 }),
    shapeBefore: fc.double({ min: 0.3, max: 10, noNaN: true }),
    shapeAfter: fc.double({ min: 0.3, max: 10, noNaN: true }),
  });

  test('agree with the chances on which side a threshold lies', () => {
    fc.assert(
      fc.property(counts, fc.double({ min: 0.5, max: 0.995, noNaN: true }), (drawn, at) => {
        const both = { ...drawn, animalsBefore: drawn.animals, animalsAfter: drawn.animals };
        const limits = bnbLimits(both, 0.9);
        const forecast = forecastAt(both, at);
        if (limits === null || forecast === null) return;
        const tails = tailsAt(forecast.law, both.eggsAfter);
        if (Math.abs(tails.atMost - 0.05) > 1e-6) expect(tails.atMost < 0.05).toBe(limits.lower > at);
        if (both.eggsAfter > 0 && limits.upper < 1 && Math.abs(tails.atLeast - 0.05) > 1e-6) {
          expect(tails.atLeast < 0.05).toBe(limits.upper < at);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('the likeliest shape', () => {
  test('has reached its largest where counts vary no more than a Poisson', () => {
    expect(likeliestShape([5, 5, 5, 5])).toBeCloseTo(1000, 6);
  });

  test('is refused where no egg was seen', () => {
    expect(() => likeliestShape([0, 0])).toThrow(RangeError);
  });
});
