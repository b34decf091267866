import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../../core/moment.ts';
import { type KeptWeather, seasonOutlook } from '../../../core/season/outlook.ts';

const TODAY = Date.UTC(2026, 6, 20);
const LATITUDE = 48;

/** Days from so many before today up to so many after yesterday. */
function weather(from: number, to: number, over: Partial<KeptWeather> = {}): KeptWeather[] {
  return Array.from({ length: to - from + 1 }, (_, i) => ({
    atMs: TODAY + (from + i) * DAY_MS,
    celsius: 20,
    rainMm: 8,
    forecast: from + i >= 0,
    ...over,
  }));
}

function ready(kept: readonly KeptWeather[]) {
  const found = seasonOutlook(kept, TODAY, LATITUDE);
  if (found.kind !== 'ready') throw new Error(`the outlook is ${found.kind}`);
  return found;
}

describe('the outlook', () => {
  test('of warm wet weeks with a forecast is high and lacks nothing', () => {
    expect(ready(weather(-60, 4))).toMatchObject({
      suggestion: 'high',
      guide: { forecastDaysMissing: 0 },
      measured: 28,
      endsDaysAgo: 0,
      oldForecasts: 0,
      gapBefore: 0,
    });
  });

  test('of cold or dry weeks is low', () => {
    expect(ready(weather(-60, 4, { celsius: 6 })).suggestion).toBe('low');
    expect(ready(weather(-60, 4, { rainMm: 0 })).suggestion).toBe('low');
  });

  test('of few cold days suggests nothing, of few warm wet ones still high', () => {
    expect(ready(weather(-12, 4, { celsius: 6 }))).toMatchObject({ suggestion: null, measured: 12 });
    expect(ready(weather(-12, 4))).toMatchObject({ suggestion: 'high', measured: 12 });
  });

  test('looks at four weeks, however long the row: a wet spring long over makes no high season', () => {
    const spring = weather(-120, -60);
    const since = weather(-59, 4, { rainMm: 0 });
    expect(ready([...spring, ...since]).suggestion).toBe('low');
  });

  test('says how much forecast rain is missing', () => {
    expect(ready(weather(-60, -1)).guide.forecastDaysMissing).toBe(4);
    expect(ready(weather(-60, 1)).guide.forecastDaysMissing).toBe(2);
  });

  test('begins behind a hole and tells how many days are missing', () => {
    const found = ready([...weather(-60, -31), ...weather(-20, 4)]);
    expect(found).toMatchObject({ measured: 20, gapBefore: 10, beginsMs: TODAY - 20 * DAY_MS });
    expect(found.days).toHaveLength(25);
  });

  test('leaves out a forecast that hangs behind a hole', () => {
    expect(ready([...weather(-30, -3), ...weather(2, 4)])).toMatchObject({
      endsDaysAgo: 2,
      guide: { forecastDaysMissing: 4 },
    });
  });

  test('counts forecasts that were never replaced', () => {
    const found = ready([...weather(-60, -4), ...weather(-3, 4, { forecast: true })]);
    expect(found.oldForecasts).toBe(3);
    expect(found.days.slice(-8).map(({ known }) => known)).toEqual([
      ...Array(3).fill('old-forecast'),
      ...Array(5).fill('forecast'),
    ]);
  });

  test('is none without weather, or of weather that ended over two weeks ago', () => {
    expect(seasonOutlook([], TODAY, LATITUDE)).toEqual({ kind: 'no-weather' });
    expect(seasonOutlook(weather(0, 4), TODAY, LATITUDE)).toEqual({ kind: 'no-weather' });
    expect(seasonOutlook(weather(-60, -16), TODAY, LATITUDE)).toEqual({
      kind: 'too-old',
      lastDayMs: TODAY - 16 * DAY_MS,
    });
    expect(seasonOutlook(weather(-60, -14), TODAY, LATITUDE).kind).toBe('ready');
  });

  test('shows six weeks and the forecast, larvae as shares of the most shown', () => {
    const { days } = ready(weather(-200, 4));
    expect(days).toHaveLength(47);
    expect(Math.max(...days.map(({ larvae }) => larvae))).toBe(1);
    expect(days.every(({ moist }) => moist)).toBe(true);
  });

  test('draws no larvae where none can be', () => {
    const { days } = ready(weather(-60, 4, { celsius: 4 }));
    expect(days.every(({ larvae }) => larvae === 0)).toBe(true);
  });

  test('takes the south for what it is: the days are short in July', () => {
    const north = ready(weather(-60, 4, { rainMm: 2.4 }));
    const found = seasonOutlook(weather(-60, 4, { rainMm: 2.4 }), TODAY, -LATITUDE);
    if (found.kind !== 'ready') throw new Error('no outlook');
    expect(found.guide.moistDays).toBeGreaterThan(north.guide.moistDays);
  });
});
