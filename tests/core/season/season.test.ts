import { describe, expect, test } from 'vitest';
import { daylightHours } from '../../../core/season/daylight.ts';
import { larvaeOver } from '../../../core/season/larvae.ts';
import {
  DEGREE_DAYS_NEEDED,
  DEVELOPMENT_BASE,
  degreeDays,
  larvalRates,
  reachInfective,
} from '../../../core/season/larval-rates.ts';
import { seasonGuide } from '../../../core/season/risk.ts';
import { evaporationOf, moistureOf, type WeatherRow } from '../../../core/season/weather.ts';
import { DEGREE_DAYS, LARVAL_RATES, LARVAL_RUN } from '../../oracles/season.ts';

const { latitude, startDayOfYear, temperature, rain, eggs, eggsAtFirst, days, daylight, moisture } =
  LARVAL_RUN;
const weather: WeatherRow = {
  latitude,
  firstDayOfYear: startDayOfYear,
  days: temperature.map((celsius, at) => ({ celsius, rainMm: rain[at] ?? 0 })),
};

function rowOf(celsius: number, rainMm: number, count: number): WeatherRow {
  return { latitude, firstDayOfYear: startDayOfYear, days: Array(count).fill({ celsius, rainMm }) };
}

describe('the published larval run', () => {
  const found = larvaeOver(weather, { eggsAtFirst, onHerbageAtFirst: 0, daily: eggs });

  test.each(days)('on day %d', (day, ...numbers) => {
    const at = found[day - 1];
    const ours = [at?.eggs, at?.early, at?.inDung, at?.onPasture, at?.onHerbage];
    for (const [i, printed] of numbers.entries()) {
      expect(Math.abs((ours[i] ?? Number.NaN) - printed)).toBeLessThanOrEqual(1e-4 * Math.max(printed, 1e-9));
    }
  });

  test.each(daylight)('has the daylight of day %d', (day, hours) => {
    expect(daylightHours(latitude, startDayOfYear + day - 1)).toBeCloseTo(hours, 5);
  });

  test('has the moisture printed', () => {
    const ours = moistureOf(weather.days, evaporationOf(weather), 0, 4);
    for (const [i, printed] of moisture.entries())
      expect(Math.abs((ours[i] ?? 9) - printed)).toBeLessThan(6e-4);
  });
});

describe('rates at constant temperature', () => {
  test.each(LARVAL_RATES)('at %d degrees', (celsius, development, egg, early, dung, soil, herbage, reach) => {
    const rates = larvalRates(celsius);
    const pairs = [
      [rates.development, development],
      [rates.eggDeath, egg],
      [rates.earlyDeath, early],
      [rates.dungDeath, dung],
      [rates.soilDeath, soil],
      [rates.onHerbage, herbage],
      [reachInfective(rates), reach],
    ] as const;
    for (const [ours, printed] of pairs)
      expect(Math.abs(ours - printed)).toBeLessThanOrEqual(6e-6 * printed + 1e-12);
  });

  test('give the degree-days of development', () => {
    expect(DEVELOPMENT_BASE).toBeCloseTo(DEGREE_DAYS.base, 5);
    expect(DEGREE_DAYS_NEEDED).toBeCloseTo(DEGREE_DAYS.needed, 4);
    expect(degreeDays([DEVELOPMENT_BASE + 10, 5])).toBeCloseTo(10, 12);
  });
});

describe('the model', () => {
  test('makes no larvae below the base temperature, however wet', () => {
    const cold = larvaeOver(rowOf(5, 20, 30), {
      eggsAtFirst: 100,
      onHerbageAtFirst: 0,
      daily: Array(30).fill(0),
    });
    expect(cold.at(-1)).toMatchObject({ early: 0, inDung: 0, onPasture: 0, onHerbage: 0 });
  });

  test('begins with the larvae that were on herbage', () => {
    const [first] = larvaeOver(rowOf(20, 5, 2), { eggsAtFirst: 0, onHerbageAtFirst: 50, daily: [0, 0] });
    expect(first?.onHerbage).toBeCloseTo(50, 9);
  });

  test('wants eggs for each day', () => {
    expect(() => larvaeOver(weather, { eggsAtFirst: 1, onHerbageAtFirst: 0, daily: [1] })).toThrow(
      RangeError,
    );
  });

  test('has no daylight outside the year or the globe', () => {
    expect(() => daylightHours(91, 1)).toThrow(RangeError);
    expect(() => daylightHours(48, 0)).toThrow(RangeError);
    expect(daylightHours(80, 172)).toBe(24);
    expect(daylightHours(80, 355)).toBe(0);
  });
});

describe('the guide', () => {
  test('is high where it is warm and wet for long enough', () => {
    expect(seasonGuide(rowOf(20, 10, 24), 20)).toMatchObject({
      risk: 'high',
      lookAgainDays: 7,
      forecastDaysMissing: 0,
    });
  });

  test.each([
    ['dry', 20, 0],
    ['cold', 8, 20],
  ])('is low where it is %s', (_name, celsius, rainMm) => {
    expect(seasonGuide(rowOf(celsius, rainMm, 24), 20)).toMatchObject({ risk: 'low', lookAgainDays: 30 });
  });

  test('says how much forecast rain is missing', () => {
    expect(seasonGuide(rowOf(20, 10, 20), 20).forecastDaysMissing).toBe(4);
    expect(seasonGuide(rowOf(20, 10, 21), 20).forecastDaysMissing).toBe(3);
  });
});
