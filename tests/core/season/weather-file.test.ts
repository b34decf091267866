import { describe, expect, test } from 'vitest';
import { readWeather } from '../../../core/season/weather-file.ts';

const NOW = Date.UTC(2026, 4, 2, 9);

function read(...lines: string[]) {
  return readWeather(
    lines.map((text, i) => ({ line: i + 1, cells: text.split(';') })),
    null,
    NOW,
  );
}

describe('a weather file', () => {
  test('gives days in a row, whatever their order, with forecast behind', () => {
    expect(
      read('date;temperature C;rain mm', '2026-05-02;12,5;0', '2026-05-01;11;3.2', '2026-05-03;14;10'),
    ).toEqual({
      ok: true,
      days: [
        { atMs: Date.UTC(2026, 4, 1), celsius: 11, rainMm: 3.2 },
        { atMs: Date.UTC(2026, 4, 2), celsius: 12.5, rainMm: 0 },
        { atMs: Date.UTC(2026, 4, 3), celsius: 14, rainMm: 10 },
      ],
      missing: 0,
      faults: [],
    });
  });

  test('takes the middle of minimum and maximum, degrees Fahrenheit and inches', () => {
    const found = read('Day;Min temp (F);Max temp (F);Rainfall (in)', '2026-05-01;50;68;1');
    expect(found).toMatchObject({ ok: true, days: [{ celsius: 15, rainMm: 25.4 }] });
  });

  test.each([
    ['2026-05-01;x;0', 'temperature C', 'not-a-number'],
    ['2026-05-01;;0', 'temperature C', 'missing'],
    ['2026-05-01;99;0', 'temperature C', 'beyond-weather'],
    ['2026-05-01;11;-1', 'rain mm', 'beyond-weather'],
    ['1/5/2026;11;0', 'date', 'date-order-not-known'],
    ['2026-02-30;11;0', 'date', 'not-a-date'],
    [';11;0', 'date', 'missing'],
    ['2026-05-30;11;0', 'date', 'beyond-forecast'],
    ['2026-04-30;11;0', 'date', 'day-twice'],
  ])('names what is wrong in %s', (row, heading, why) => {
    expect(read('date;temperature C;rain mm', '2026-04-30;10;0', row)).toEqual({
      ok: true,
      days: [{ atMs: Date.UTC(2026, 3, 30), celsius: 10, rainMm: 0 }],
      missing: 0,
      faults: [{ line: 3, heading, why }],
    });
  });

  test('with a hole tells how many days are missing', () => {
    const hole = read('date;temperature C;rain mm', '2026-04-26;10;0', '2026-04-30;10;0');
    expect(hole).toMatchObject({ ok: true, missing: 3, faults: [] });
  });

  test('leaves a day out whose maximum lies below its minimum', () => {
    const upside = read('date;min temp C;max temp C;rain mm', '2026-04-28;10;9;0');
    expect(upside).toMatchObject({ days: [], faults: [{ heading: 'max temp C', why: 'max-below-min' }] });
  });

  test.each([
    ['without a unit', ['date;temperature;rain', '2026-05-01;1;1'], 'no-such-columns'],
    ['without rain', ['date;temperature C', '2026-05-01;1'], 'no-such-columns'],
    ['without days', ['date;temperature C;rain mm', ';;'], 'empty'],
    ['without anything', [], 'empty'],
  ])('%s is refused', (_name, lines, why) => {
    expect(read(...lines)).toMatchObject({ ok: false, why });
  });
});
