import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ageAt } from '../../kiosk/animals/age.ts';
import { dayOf, isoDay, stepped } from '../../kiosk/animals/day-picking.ts';
import { growthChart } from '../../kiosk/animals/growth-geometry.ts';
import { prefixIn, prefixPart } from '../../kiosk/animals/open-prefix.ts';
import { beginningWith, nextCharacters } from '../../kiosk/animals/prefix.ts';
import { NOTHING_SCORED, nextSign, signsOf } from '../../kiosk/animals/scoring.ts';
import type { WeighingView } from '../../shared/animal-page.ts';

const named = (name: string, ...visualTags: string[]) => ({ name, visualTags });

describe('finding an animal', () => {
  const herd = [named('Anna', '417'), named('bella'), named('418'), named('B 12'), named('Žofie')];

  test('goes by name or visual tag, whatever capitals and blanks', () => {
    expect(beginningWith(herd, 'b')).toEqual([named('bella'), named('B 12')]);
    expect(beginningWith(herd, '41')).toEqual([named('Anna', '417'), named('418')]);
    expect(beginningWith(herd, '')).toHaveLength(5);
  });

  test('offers only characters that lead on', () => {
    expect(nextCharacters(herd, '')).toEqual(['4', 'A', 'B', 'Ž']);
    expect(nextCharacters(herd, 'b')).toEqual(['1', 'E']);
    expect(nextCharacters(herd, '417')).toEqual([]);
  });

  test('any tap on a character offered finds somebody', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ minLength: 1, maxLength: 8 }), { minLength: 1 }), (names) => {
        const some = names.map((name) => named(name));
        for (const character of nextCharacters(some, ''))
          expect(beginningWith(some, character).length).toBeGreaterThan(0);
      }),
    );
  });

  test('keeps what it was narrowed to in the address', () => {
    expect(prefixIn(prefixPart('41'))).toBe('41');
    expect(prefixIn('a1')).toBeNull();
    expect(prefixIn(undefined)).toBeNull();
  });
});

describe('picking a day', () => {
  const last = { year: 2026, month: 4, day: 14 };

  test.each([
    ['the day goes over the end of a month', { year: 2026, month: 2, day: 28 }, 'day', 1, '2026-03-01'],
    [
      'the month of a 31st ends at its own last',
      { year: 2026, month: 3, day: 31 },
      'month',
      -1,
      '2026-02-28',
    ],
    ['the year of a leap day ends at the 28th', { year: 2024, month: 2, day: 29 }, 'year', 1, '2025-02-28'],
    ['the month goes over the end of a year', { year: 2025, month: 12, day: 5 }, 'month', 1, '2026-01-05'],
    ['no step passes today', { year: 2026, month: 4, day: 14 }, 'day', 1, '2026-04-14'],
    ['a year more than today is today', { year: 2025, month: 12, day: 5 }, 'year', 1, '2026-04-14'],
  ] as const)('%s', (_what, from, part, by, expected) => {
    expect(isoDay(stepped(from, part, by, last))).toBe(expected);
  });

  test('every step is a day of the calendar', () => {
    const day = fc.date({ min: new Date('1990-01-01'), max: new Date('2026-04-14'), noInvalidDate: true });
    const part = fc.constantFrom('day', 'month', 'year');
    fc.assert(
      fc.property(day, part, fc.constantFrom(1, -1), (date, which, by) => {
        const found = isoDay(stepped(dayOf(date.toISOString()), which as 'day', by as 1, last));
        expect(new Date(found).toISOString().slice(0, 10)).toBe(found);
      }),
    );
  });
});

test.each([
  [null, null],
  ['2026-04-20T00:00:00Z', null],
  ['2026-04-13T00:00:00Z', { unit: 'days', count: 1 }],
  ['2026-03-01T00:00:00Z', { unit: 'weeks', count: 6 }],
  ['2025-04-14T00:00:00Z', { unit: 'months', count: 11 }],
  ['2020-04-14T00:00:00Z', { unit: 'years', count: 5 }],
])('an animal born at %s is told so old', (bornAt, age) => {
  expect(ageAt(bornAt, Date.parse('2026-04-14T00:00:00Z'))).toEqual(age);
});

describe('the growth line', () => {
  const area = { width: 100, height: 50 };
  const weighing = (at: string, grams: number, extra: Partial<WeighingView> = {}): WeighingView => ({
    at,
    grams,
    uncertaintyGrams: 100,
    method: 'scale',
    doubt: null,
    ...extra,
  });

  test('has nothing to draw without a weight', () => {
    expect(growthChart([], [], area)).toBeNull();
  });

  test('stands in time and weight to scale, with two standard uncertainties either way', () => {
    const chart = growthChart(
      [
        weighing('2026-01-11T00:00:00Z', 30_000),
        weighing('2026-01-01T00:00:00Z', 20_000),
        weighing('2026-01-06T00:00:00Z', 25_000),
      ],
      ['2026-01-06T00:00:00Z', '2027-01-01T00:00:00Z'],
      area,
    );
    if (chart === null) throw new Error('nothing was drawn');
    expect(chart.dots.map(({ x }) => x)).toEqual([0, 50, 100]);
    expect(chart.doses).toEqual([50]);
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
    const chart = growthChart(
      [
        weighing('2026-01-01T00:00:00Z', 20_000),
        weighing('2026-01-06T00:00:00Z', 55_000, { doubt: 'pounds-for-kilograms' }),
        weighing('2026-01-11T00:00:00Z', 21_000),
      ],
      [],
      area,
    );
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
        const chart = growthChart(
          some.map(({ ms, grams }) => weighing(new Date(ms).toISOString(), grams)),
          [],
          area,
        );
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

describe('scoring', () => {
  test('asks each species for the signs that were made for it', () => {
    expect(signsOf('goat')).toEqual(['eyelid', 'body', 'soiling', 'jaw', 'coat']);
    expect(signsOf('sheep')).toEqual(['eyelid', 'body', 'soiling', 'jaw']);
    expect(signsOf('cattle')).toEqual(['body', 'soiling', 'jaw']);
  });

  test('goes on to the next sign not seen yet, round to the first, and stays where all are', () => {
    const signs = signsOf('sheep');
    expect(nextSign(signs, 'eyelid', { ...NOTHING_SCORED, eyelid: 4 })).toBe('body');
    expect(nextSign(signs, 'jaw', { ...NOTHING_SCORED, jaw: 'none', body: 3 })).toBe('eyelid');
    const all = { eyelid: 1, body: 3, soiling: 0, jaw: 'none', coat: null } as const;
    expect(nextSign(signs, 'jaw', all)).toBe('jaw');
  });
});
