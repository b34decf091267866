import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { grams } from '../../../core/quantity/mass.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { poissonInterval } from '../../../core/statistics/poisson.ts';
import {
  type EggCount,
  eggsPerGram,
  eggsPerGramInterval,
  groupMean,
  whyNotCount,
} from '../../../core/worms/egg-count.ts';
import { chanceOfSeeing, eggFactor } from '../../../core/worms/egg-factor.ts';
import {
  CHANCE_OF_ONE,
  GARWOOD_95,
  GARWOOD_PRINTED,
  MCMASTER_FACTORS,
  WORKED_FACTOR,
} from '../../oracles/egg-counts.ts';

function counted(eggs: number, factor = 50, animals = 1): EggCount {
  return { eggs, factor, method: 'McMaster', animals, takenAtMs: 0 };
}

function methodOf(dung: number, suspension: number, under: number) {
  return {
    name: 'McMaster',
    dung: grams(dung),
    suspension: millilitres(suspension),
    counted: millilitres(under),
  };
}

describe('the limits of a count', () => {
  test.each(GARWOOD_95)('%d eggs lie between %d and %d at 95 %%', (eggs, lower, upper) => {
    const limits = poissonInterval(eggs, 0.95);
    expect(limits.lower).toBeCloseTo(lower, 6);
    expect(limits.upper).toBeCloseTo(upper, 6);
  });

  test.each(GARWOOD_PRINTED)(
    '%d eggs at %d are those others print',
    (eggs, level, lower, upper, decimals) => {
      const limits = poissonInterval(eggs, level);
      expect(limits.lower).toBeCloseTo(lower, decimals);
      expect(limits.upper).toBeCloseTo(upper, decimals);
    },
  );

  test('hold the count, and widen with the confidence', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), (eggs) => {
        const [narrow, wide] = [poissonInterval(eggs, 0.9), poissonInterval(eggs, 0.99)];
        expect(narrow.lower).toBeLessThanOrEqual(eggs);
        expect(narrow.upper).toBeGreaterThan(eggs);
        expect(wide.lower).toBeLessThanOrEqual(narrow.lower);
        expect(wide.upper).toBeGreaterThan(narrow.upper);
      }),
    );
  });

  test('are refused for part of an egg', () => {
    expect(() => poissonInterval(1.5, 0.95)).toThrow(RangeError);
    expect(() => poissonInterval(-1, 0.95)).toThrow(RangeError);
  });
});

describe('the factor of a method', () => {
  test.each(MCMASTER_FACTORS)(
    '%d g in %d mL with %d mL counted prints as %d',
    (dung, made, under, printed) => {
      expect(Math.round(eggFactor(methodOf(dung, made, under)))).toBe(printed);
    },
  );

  test('is the worked one', () => {
    const { grams: dung, suspensionMl, countedMl, factor } = WORKED_FACTOR;
    expect(eggFactor(methodOf(dung, suspensionMl, countedMl))).toBeCloseTo(factor, 12);
  });

  test('is kept unrounded', () => {
    expect(eggFactor(methodOf(2, 60, 0.9))).toBeCloseTo(33.3333333333, 9);
    expect(eggsPerGram(counted(3, eggFactor(methodOf(2, 60, 0.9))))).toBeCloseTo(100, 9);
  });

  test.each([
    [0, 60, 0.3],
    [2, 60, 0],
    [2, 0.1, 0.3],
  ])('is refused for %d g in %d mL with %d mL counted', (dung, made, under) => {
    expect(() => eggFactor(methodOf(dung, made, under))).toThrow(RangeError);
  });

  test.each(CHANCE_OF_ONE)('at %d epg and factor %d an egg is seen with chance %d', (epg, factor, chance) => {
    expect(chanceOfSeeing(epg, factor)).toBeCloseTo(chance, 4);
  });
});

describe('eggs per gram', () => {
  test.each([
    [0, 50, 0, 184],
    [1, 50, 1, 279],
    [10, 50, 240, 920],
    [100, 5, 407, 608],
  ])('%d eggs at factor %d are between %d and %d', (eggs, factor, lower, upper) => {
    const limits = eggsPerGramInterval(counted(eggs, factor));
    expect(Math.round(limits.lower)).toBe(lower);
    expect(Math.round(limits.upper)).toBe(upper);
  });

  test('of a group weigh a composite by its animals', () => {
    const mean = groupMean([counted(2), counted(10, 50, 9)]);
    expect(mean).toMatchObject({ eggsPerGram: 460, animals: 10, eggs: 12 });
  });

  test('of ten like samples have the limits of their eggs together', () => {
    const mean = groupMean(Array.from({ length: 10 }, () => counted(4)));
    expect(mean?.eggsPerGram).toBe(200);
    expect(mean?.counting.lower).toBeCloseTo(28.576586 * 5, 4);
    expect(mean?.counting.upper).toBeCloseTo(54.468647 * 5, 4);
  });

  test('of a group without an egg still have an upper limit', () => {
    const mean = groupMean([counted(0), counted(0)]);
    expect(mean?.eggsPerGram).toBe(0);
    expect(mean?.counting.upper).toBeCloseTo(3.688879 * 25, 4);
  });

  test('of nothing are not known', () => {
    expect(groupMean([])).toBeNull();
  });
});

describe('a count that cannot be is refused', () => {
  test.each([
    ['not-whole', { eggs: 1.5 }],
    ['negative', { eggs: -1 }],
    ['too-many', { eggs: 10_001 }],
    ['no-factor', { factor: 0 }],
    ['no-factor', { factor: Number.NaN }],
    ['no-animals', { animals: 0 }],
    ['in-future', { takenAtMs: 11 }],
  ] as const)('as %s', (why, change) => {
    expect(whyNotCount({ ...counted(3), ...change }, 10)).toBe(why);
  });

  test('and one that can be is kept', () => {
    expect(whyNotCount(counted(0), 10)).toBeNull();
  });
});
