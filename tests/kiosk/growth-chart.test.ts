import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { MassUnit } from '../../core/quantity/mass.ts';
import { growthEvents, nearestEvent } from '../../kiosk/animals/growth-events.ts';
import { growthChart } from '../../kiosk/animals/growth-geometry.ts';
import type { AnimalPage, WeighingView } from '../../shared/animal-page.ts';
import { HERD, treatment } from './preview/base-state.ts';

const [CLOVER] = HERD;
if (CLOVER === undefined) throw new Error('the herd is empty');

function weighed(at: string, grams: number, extra: Partial<WeighingView> = {}): WeighingView {
  return {
    id: at,
    at,
    grams,
    uncertaintyGrams: 100,
    method: 'scale',
    doubt: null,
    said: null,
    hoursOffFeed: null,
    ...extra,
  };
}

describe('the chart of growth', () => {
  const area = { width: 100, height: 50 };

  const animal: AnimalPage['animal'] = { ...CLOVER, bornAt: null };
  const chartOf = (
    weighings: WeighingView[],
    change: Partial<AnimalPage['animal']> = {},
    unit: MassUnit = 'kg',
  ) => growthChart({ page: { weighings, animal: { ...animal, ...change } }, unit }, area);

  test('has nothing to draw without a weight', () => {
    expect(chartOf([])).toBeNull();
  });

  test('stands in time and weight to scale, with two standard uncertainties either way', () => {
    const chart = chartOf([
      weighed('2026-01-11T00:00:00Z', 30_000),
      weighed('2026-01-01T00:00:00Z', 20_000),
      weighed('2026-01-06T00:00:00Z', 25_000),
    ]);
    if (chart === null) throw new Error('nothing was drawn');
    expect(chart.dots.map(({ x }) => x)).toEqual([0, 50, 100]);
    expect(chart.xOf(Date.parse('2026-01-06T00:00:00Z'))).toBe(50);
    const [first, middle, last] = chart.dots;
    expect(middle?.y).toBeCloseTo(25, 6);
    expect((first?.y ?? 0) - (last?.y ?? 0)).toBeCloseTo(
      (10_000 / (chart.highGrams - chart.lowGrams)) * 50,
      6,
    );
    expect((middle?.bottom ?? 0) - (middle?.top ?? 0)).toBeCloseTo(
      (400 / (chart.highGrams - chart.lowGrams)) * 50,
      6,
    );
  });

  test('keeps a doubted weight at its edge and out of the line', () => {
    const chart = chartOf([
      weighed('2026-01-01T00:00:00Z', 20_000),
      weighed('2026-01-06T00:00:00Z', 55_000, { doubt: 'pounds-for-kilograms' }),
      weighed('2026-01-11T00:00:00Z', 21_000),
    ]);
    expect(chart?.highGrams).toBeLessThan(25_000);
    expect(chart?.dots[1]).toMatchObject({ y: 0, doubted: true });
    expect(chart?.line.split(' ')).toHaveLength(2);
  });

  test('of any weights lies within its area', () => {
    const weights = fc.array(
      fc.record({ ms: fc.integer({ min: 0, max: 1e12 }), grams: fc.integer({ min: 1, max: 1e6 }) }),
      {
        minLength: 1,
      },
    );
    fc.assert(
      fc.property(weights, (some) => {
        const chart = chartOf(some.map(({ ms, grams }) => weighed(new Date(ms).toISOString(), grams)));
        for (const { x, y, top, bottom } of chart?.dots ?? []) {
          for (const value of [x, y, top, bottom]) expect(Number.isFinite(value)).toBe(true);
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(100);
          expect(top).toBeLessThanOrEqual(bottom);
        }
      }),
    );
  });
});

describe('round values along the edges of the chart', () => {
  const area = { width: 100, height: 50 };
  const weighings = [
    weighed('2026-01-02T00:00:00Z', 20_000, { uncertaintyGrams: null }),
    weighed('2026-04-20T00:00:00Z', 30_000, { uncertaintyGrams: null }),
  ];

  test.each([
    ['kg', [20, 22, 24, 26, 28, 30]],
    ['lb', [45, 50, 55, 60, 65]],
  ] as const)('count in %s', (unit, values) => {
    const chart = growthChart({ page: { weighings, animal: CLOVER }, unit }, area);
    expect(chart?.weightTicks.map(({ value }) => value)).toEqual(values);
    const places = chart?.weightTicks.map(({ at }) => at) ?? [];
    expect([...places].sort((a, b) => b - a)).toEqual(places);
  });

  test('are the beginnings of months over a season', () => {
    const chart = growthChart({ page: { weighings, animal: CLOVER }, unit: 'kg' }, area);
    expect(chart?.dayTicks.map(({ value }) => new Date(value).toISOString().slice(0, 10))).toEqual([
      '2026-02-01',
      '2026-03-01',
      '2026-04-01',
    ]);
  });

  test('of a single weight are its own day', () => {
    const chart = growthChart(
      { page: { weighings: weighings.slice(0, 1), animal: CLOVER }, unit: 'kg' },
      area,
    );
    expect(chart?.dayTicks).toHaveLength(1);
  });

  test('and the published band of a kid opens from its first weight until it is three months old', () => {
    const young = { ...CLOVER, class: 'young', species: 'goat', bornAt: '2026-01-01T00:00:00Z' } as const;
    const chart = growthChart({ page: { weighings, animal: young }, unit: 'kg' }, area);
    const [first, high, low] = (chart?.expected?.points ?? '')
      .split(' ')
      .map((point) => point.split(',').map(Number));
    expect(first?.[0]).toBe(0);
    expect(high?.[0]).toBeCloseTo(chart?.xOf(Date.parse('2026-04-02T00:00:00Z')) ?? -1, 1);
    expect(high?.[1]).toBeLessThan(low?.[1] ?? 0);
    const grown = { ...young, class: 'female' } as const;
    expect(growthChart({ page: { weighings, animal: grown }, unit: 'kg' }, area)?.expected).toBeNull();
  });
});

describe('what is touched on the chart', () => {
  const page = {
    weighings: [weighed('2026-02-01T00:00:00Z', 2e4), weighed('2026-01-01T00:00:00Z', 1e4)],
    treatments: [
      treatment('t', { givenAt: '2026-01-20T00:00:00Z' }),
      treatment('old', { givenAt: '2025-01-01T00:00:00Z' }),
    ],
    scores: [],
  };
  const events = growthEvents(page);
  const xOf = (ms: number): number => (ms - Date.parse('2026-01-01T00:00:00Z')) / 86_400_000;

  test('are weights, doses and scores in order of time, from the first weight on', () => {
    expect(events.map(({ kind }) => kind)).toEqual(['weight', 'dose', 'weight']);
  });

  test.each([
    [-5, 0],
    [9.4, 0],
    [9.6, 1],
    [24, 1],
    [100, 2],
  ])('at %d is the nearest, number %d', (x, at) => {
    expect(nearestEvent(events, x, xOf)).toBe(at);
  });

  test('is nothing where there is nothing', () => {
    expect(nearestEvent([], 3, xOf)).toBeNull();
  });
});
