import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { binomialLimits, lowerLimitNoneAfter } from '../../../core/reduction/binomial.ts';
import { type Design, momentsOf, observedReduction } from '../../../core/reduction/counts.ts';
import { deltaLimits } from '../../../core/reduction/delta.ts';
import { logRatioLimits } from '../../../core/reduction/log-ratio.ts';
import type { Interval } from '../../../core/statistics/interval.ts';
import { EPGS, FOALS, NONE_AFTER, VIGNETTE } from '../../oracles/reduction.ts';

function momentsFrom(design: Design, before: readonly number[], after: readonly number[], factor = 1) {
  return momentsOf({ design, before, after, factorBefore: factor, factorAfter: factor });
}

function expectPercent(limits: Interval | null, [lower, upper]: readonly [number, number], decimals: number) {
  expect(limits).not.toBeNull();
  expect((limits?.lower ?? 0) * 100).toBeCloseTo(lower, decimals);
  expect((limits?.upper ?? 0) * 100).toBeCloseTo(upper, decimals);
}

function expectFraction(limits: Interval | null, [lower, upper]: readonly [number, number]) {
  expect(limits).not.toBeNull();
  expect(limits?.lower).toBeCloseTo(lower, 8);
  expect(limits?.upper).toBeCloseTo(upper, 8);
}

describe('fourteen sheep under a benzimidazole, to the printed digits', () => {
  const paired = momentsFrom('paired', EPGS.before, EPGS.after);
  const unpaired = momentsFrom('unpaired', EPGS.before, EPGS.after);

  test('the reduction is 92.3 %', () => {
    expect(observedReduction(paired) * 100).toBeCloseTo(EPGS.percent, 10);
  });

  test('raw eggs at factor 50 give the same as eggs per gram', () => {
    const raw = (list: readonly number[]) => list.map((value) => value / EPGS.factor);
    expect(momentsFrom('paired', raw(EPGS.before), raw(EPGS.after), EPGS.factor)).toEqual(paired);
  });

  test.each([
    ['1992, unpaired', logRatioLimits(unpaired, 0.95), EPGS.logUnpaired95],
    ['1992, unpaired, 90 %', logRatioLimits(unpaired, 0.9), EPGS.logUnpaired90],
    ['paired log ratio', logRatioLimits(paired, 0.95), EPGS.logPaired95],
    ['paired log ratio, 90 %', logRatioLimits(paired, 0.9), EPGS.logPaired90],
    ['delta, paired, 90 %', deltaLimits(paired, 0.9), EPGS.deltaPaired90],
    ['delta, paired, 95 %', deltaLimits(paired, 0.95), EPGS.deltaPaired95],
    ['delta, unpaired, 90 %', deltaLimits(unpaired, 0.9), EPGS.deltaUnpaired90],
    ['binomial', binomialLimits(EPGS.eggs.before, EPGS.eggs.after, 0.95), EPGS.binomial95],
  ] as const)('%s', (_name, limits, printed) => {
    expectPercent(limits, printed, 9);
  });
});

describe('foals, as their authors print them', () => {
  test.each(FOALS)('$name', ({ before, after, percent, limits }) => {
    const moments = momentsFrom('unpaired', before, after);
    expect(observedReduction(moments) * 100).toBeCloseTo(percent[0], percent[1]);
    expectPercent(logRatioLimits(moments, 0.95), [limits[0], limits[1]], limits[2]);
  });
});

describe('ten raw counts of a vignette', () => {
  const paired = momentsFrom('paired', VIGNETTE.before, VIGNETTE.after);
  const unpaired = momentsFrom('unpaired', VIGNETTE.before, VIGNETTE.after);

  test.each([
    ['delta, paired, 95 %', deltaLimits(paired, 0.95), VIGNETTE.deltaPaired95],
    ['delta, unpaired, 95 %', deltaLimits(unpaired, 0.95), VIGNETTE.deltaUnpaired95],
    ['log ratio, paired, 95 %', logRatioLimits(paired, 0.95), VIGNETTE.logPaired95],
    ['log ratio, unpaired, 95 %', logRatioLimits(unpaired, 0.95), VIGNETTE.logUnpaired95],
    ['delta, paired, 90 %', deltaLimits(paired, 0.9), VIGNETTE.deltaPaired90],
    ['delta, unpaired, 90 %', deltaLimits(unpaired, 0.9), VIGNETTE.deltaUnpaired90],
    ['log ratio, paired, 90 %', logRatioLimits(paired, 0.9), VIGNETTE.logPaired90],
    ['log ratio, unpaired, 90 %', logRatioLimits(unpaired, 0.9), VIGNETTE.logUnpaired90],
    ['binomial, 99 %', binomialLimits(132, 16, 0.99), VIGNETTE.binomial99],
    ['binomial, 98 %', binomialLimits(132, 16, 0.98), VIGNETTE.binomial98],
  ] as const)('%s', (_name, limits, printed) => {
    expectFraction(limits, printed);
  });
});

test.each(NONE_AFTER)('none after %d before leaves %d below', (eggs, lower) => {
  expect(lowerLimitNoneAfter(eggs)).toBeCloseTo(lower, 6);
});

describe('limits', () => {
  const counts = fc.array(fc.tuple(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 })), {
    minLength: 3,
    maxLength: 20,
  });

  test('stand on both sides of the middle of their law and are never clamped', () => {
    fc.assert(
      fc.property(counts, (pairs) => {
        const moments = momentsFrom(
          'paired',
          pairs.map(([before]) => before),
          pairs.map(([, after]) => after),
        );
        const log = logRatioLimits(moments, 0.9);
        expect(log?.lower).toBeLessThanOrEqual(observedReduction(moments) + 1e-9);
        expect(log?.upper).toBeGreaterThanOrEqual(observedReduction(moments) - 1e-9);
        const delta = deltaLimits(moments, 0.9);
        expect(delta?.lower).toBeLessThanOrEqual((delta?.upper ?? 0) + 1e-9);
        expect(delta?.upper).toBeLessThanOrEqual(1);
      }),
    );
  });

  test('are not defined where no egg was seen after', () => {
    const none = momentsFrom('paired', [5, 9, 2], [0, 0, 0]);
    expect(logRatioLimits(none, 0.9)).toBeNull();
    expect(deltaLimits(none, 0.9)).toBeNull();
  });

  test('close up where every animal fell by the same share', () => {
    const alike = momentsFrom('paired', [10, 20, 30], [1, 2, 3]);
    expect(deltaLimits(alike, 0.9)?.lower).toBeCloseTo(0.9, 6);
    expect(deltaLimits(alike, 0.9)?.upper).toBeCloseTo(0.9, 6);
  });

  test('by eggs alone are not defined for more after than before', () => {
    expect(binomialLimits(10, 11, 0.9)).toBeNull();
    expect(() => binomialLimits(0, 0, 0.9)).toThrow(RangeError);
  });
});
