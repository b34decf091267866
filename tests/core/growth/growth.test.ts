import { describe, expect, test } from 'vitest';
import { boerFeedlotWeight, expectedBand, GAIN_BANDS } from '../../../core/growth/expected.ts';
import { type DailyGain, gainBetween, trendOf } from '../../../core/growth/gain.ts';
import { eachAgainstMob } from '../../../core/growth/mob.ts';
import { hoursOffFeedAt, judgeWeighings, type Weighing } from '../../../core/growth/weighing.ts';
import { DAY_MS } from '../../../core/moment.ts';
import { grams, kilograms, massIn, pounds } from '../../../core/quantity/mass.ts';
import { quantity } from '../../../core/quantity/quantity.ts';
import { mean, median } from '../../../core/statistics/moments.ts';
import { GROWTH_SERIES, PRINTED_GAINS } from '../../oracles/growth.ts';

function weighed(day: number, kg: number, hoursOffFeed: number | null = null): Weighing {
  return {
    id: `w${day}`,
    mass: kilograms(kg),
    uncertainty: null,
    atMs: day * DAY_MS,
    method: 'scale',
    hoursOffFeed,
  };
}

const kid = { species: 'goat', class: 'young' } as const;
const perDay = (value: number): DailyGain => quantity('g/d', value);

describe('daily gain', () => {
  const { days, rows, poundsAsGrams } = PRINTED_GAINS;

  test.each(rows)('%d lb in 14 days print as %d lb a day', (gained, printed) => {
    const from = { ...weighed(0, 0), mass: pounds(50) };
    const to = { ...weighed(days, 0), mass: pounds(50 + gained) };
    const gain = gainBetween(from, to);
    expect((gain?.value ?? 0) / massIn(pounds(1), 'g')).toBeCloseTo(printed, 3);
  });

  test.each(poundsAsGrams)('%d lb a day are %d g', (lb, grams) => {
    expect(massIn(pounds(lb), 'g')).toBeCloseTo(grams, 1);
  });

  test('within a day is not told', () => {
    expect(gainBetween(weighed(0, 20), weighed(0.5, 20.4))).toBeNull();
    expect(gainBetween(weighed(3, 20), weighed(0, 19))).toBeNull();
  });
});

describe('the trend of a kid', () => {
  const series = GROWTH_SERIES[5];
  const weighings = series.days.map((day, i) => weighed(day, series.weights[i] ?? 0));

  test('is 57.1 g a day with one bad weight among six', () => {
    const trend = trendOf(judgeWeighings(kid, weighings));
    expect(trend?.gain.value).toBeCloseTo(57.14285714, 6);
    expect(trend).toMatchObject({ used: 6, doubted: 0, unlikeFeed: false });
  });

  test('is not told from two weights, nor from one day', () => {
    expect(trendOf(judgeWeighings(kid, weighings.slice(0, 2)))).toBeNull();
    expect(trendOf(judgeWeighings(kid, [weighed(0, 20), weighed(0, 20.1), weighed(0, 20.2)]))).toBeNull();
  });

  test.each([
    ['gaining', [20, 21, 22, 23, 24, 25]],
    ['losing', [25, 24.5, 24, 23.5, 23, 22.5]],
    ['not-clear', [20, 20.4, 19.8, 20.2, 19.9, 20.1]],
  ] as const)('is %s', (direction, kgs) => {
    const trend = trendOf(
      judgeWeighings(
        kid,
        kgs.map((kg, i) => weighed(i * 14, kg)),
      ),
    );
    expect(trend?.direction).toBe(direction);
  });

  test('says when weights full and off feed are mixed', () => {
    const mixed = [weighed(0, 20, 0), weighed(14, 21, 12), weighed(28, 22, 0)];
    expect(trendOf(judgeWeighings(kid, mixed))?.unlikeFeed).toBe(true);
  });
});

describe('a weight hard to believe', () => {
  test('is marked and kept, and the next is held against the last one believed', () => {
    const judged = judgeWeighings(kid, [weighed(0, 20), weighed(14, 46), weighed(28, 22)]);
    expect(judged.map(({ doubt }) => doubt)).toEqual([null, 'pounds-for-kilograms', null]);
    expect(judged).toHaveLength(3);
  });

  test('does not move the trend', () => {
    const trend = trendOf(
      judgeWeighings(kid, [weighed(0, 20), weighed(14, 46), weighed(28, 22), weighed(42, 23)]),
    );
    expect(trend?.gain.value).toBeCloseTo(71.4286, 3);
    expect(trend).toMatchObject({ used: 3, doubted: 1 });
  });
});

describe('against the mob', () => {
  const others = [120, 140, 160, 130, 150].map(perDay);

  test.each([
    [139, 1, 'behind'],
    [140, 1, 'with-the-mob'],
    [100, 0.66, 'with-the-mob'],
    [92, 0.66, 'behind'],
  ] as const)('%d g a day at a share of %d is %s', (gain, share, standing) => {
    expect(eachAgainstMob([...others, perDay(gain)], share).at(-1)).toMatchObject({
      standing,
      mobMean: 140,
      mobMedian: 140,
      others: 5,
    });
  });

  test('nothing is said beside four others, or a mob that loses', () => {
    expect(eachAgainstMob(others)).toEqual(others.map(() => null));
    expect(eachAgainstMob(others.map(() => perDay(-10)).concat(perDay(100))).at(-1)).toBeNull();
  });

  test('each is held against all but itself', () => {
    const mob = [...others, perDay(140), perDay(400)];
    const without = eachAgainstMob(mob).map((each) => [each?.mobMean.toFixed(3), each?.mobMedian]);
    expect(without).toEqual(
      mob.map((_, out) => {
        const rest = mob.flatMap(({ value }, i) => (i === out ? [] : [value]));
        return [mean(rest).toFixed(3), median(rest)];
      }),
    );
  });
});

describe('the published line of feedlot goats', () => {
  test.each([
    [126, 20.211],
    [266, 48.491],
  ])('at %d days is %d kg', (days, kg) => {
    const weight = boerFeedlotWeight(days * DAY_MS);
    expect(weight && massIn(weight, 'kg')).toBeCloseTo(kg, 9);
  });

  test('ends where it was fitted', () => {
    expect(boerFeedlotWeight(125 * DAY_MS)).toBeNull();
    expect(boerFeedlotWeight(267 * DAY_MS)).toBeNull();
  });
});

describe('where an animal is expected to weigh in', () => {
  const kid = { species: 'goat', class: 'young', bornAtMs: 0 } as const;
  const first = { atMs: 10 * DAY_MS, mass: grams(5000) };

  test('opens from its own first weight by the published gains', () => {
    const band = expectedBand(kid, first, 40 * DAY_MS);
    expect(band?.low.value).toBeCloseTo(5000 + 30 * 151, 6);
    expect(band?.high.value).toBeCloseTo(5000 + 30 * 227, 6);
    expect(band?.band.source).toContain('university extension');
  });

  test('ends at the age its source names', () => {
    expect(expectedBand(kid, first, 400 * DAY_MS)?.toMs).toBe(91 * DAY_MS);
    expect(expectedBand(kid, { ...first, atMs: 91 * DAY_MS }, 400 * DAY_MS)).toBeNull();
  });

  test.each([
    ['a grown animal', { ...kid, class: 'female' }],
    ['a birth that is not known', { ...kid, bornAtMs: null }],
    ['a species of which nothing is published', { ...kid, species: 'cattle' }],
    ['a birth after its first weight', { ...kid, bornAtMs: 20 * DAY_MS }],
  ] as const)('is not said for %s', (_what, animal) => {
    expect(expectedBand(animal, first, 40 * DAY_MS)).toBeNull();
  });

  test('stands on bands that name their source', () => {
    for (const { low, high, source } of GAIN_BANDS) {
      expect(low).toBeLessThan(high);
      expect(source.length).toBeGreaterThan(10);
    }
  });
});

describe('a person’s word on a weight', () => {
  const goat = { species: 'goat', class: 'female' } as const;
  const history = [weighed(0, 30), weighed(30, 44), weighed(60, 45)];
  const judge = (words: Record<string, 'true' | 'wrong'> = {}) =>
    judgeWeighings(goat, history, new Map(Object.entries(words))).map(({ doubt }) => doubt);

  test('that it is true stands before any doubt, and the next is held against it', () => {
    expect(judge()).toEqual([null, 'far-from-last', 'far-from-last']);
    expect(judge({ w30: 'true' })).toEqual([null, null, null]);
  });

  test('that it is wrong takes it out of growth, and is kept', () => {
    expect(judge({ w0: 'wrong' })).toEqual(['said-wrong', null, null]);
    expect(trendOf(judgeWeighings(goat, history, new Map([['w0', 'wrong']])))).toBeNull();
    expect(judgeWeighings(goat, history, new Map([['w0', 'wrong']]))).toHaveLength(3);
  });
});

test.each([
  [null, 10, null],
  [20 * 3_600_000, 10 * 3_600_000, null],
  [0, 12.34 * 3_600_000, 12.3],
  [0, 48 * 3_600_000, 48],
  [0, 49 * 3_600_000, null],
])('feed taken away at %s is so long before a weight at %d: %s hours', (since, at, hours) => {
  expect(hoursOffFeedAt(since, at)).toBe(hours);
});
