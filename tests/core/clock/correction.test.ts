import { describe, expect, test } from 'vitest';
import { type Dated, redated, type Told } from '../../../core/clock/correction.ts';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';

const NOON = Date.UTC(2027, 3, 12, 12);
const YEAR_MS = 365 * DAY_MS;
const MINUTE_MS = 60_000;

/** A record written so many minutes after the board's start. */
function written(atMs: number, minutes: number, clockTrusted = true, start = 'this-start'): Dated {
  return { atMs, clockTrusted, board: { start, sinceMs: minutes * MINUTE_MS } };
}

/** The word, an hour after the board's start, that it was noon. */
const NOON_AT_AN_HOUR: Told = {
  ofStart: { board: { start: 'this-start', sinceMs: HOUR_MS }, isMs: NOON },
  wasBeforeMs: null,
};

describe('told at one hour of running time that it was noon', () => {
  // Each by hand: a record at 20 min of running time was written 40 min before noon, whatever its date says.
  const AT_1120 = Date.UTC(2027, 3, 12, 11, 20);

  test.each([
    ['forty years back', written(AT_1120 - 40 * YEAR_MS, 20, false), AT_1120],
    ['a day ahead, and believed then', written(AT_1120 + DAY_MS, 20), AT_1120],
    ['three hours back in mid-round', written(AT_1120 - 3 * HOUR_MS, 20, false), AT_1120],
    [
      'written after the word, by a clock that was not believed',
      written(NOON, 75, false),
      NOON + 15 * MINUTE_MS,
    ],
  ])('a record %s is dated by the running time between', (_, record, atMs) => {
    expect(redated(record, NOON_AT_AN_HOUR)).toEqual({ ...record, atMs, clockTrusted: true });
  });

  test('a record that agrees within a minute stands as it was written', () => {
    const record = written(AT_1120 + 50_000, 20);
    expect(redated(record, NOON_AT_AN_HOUR)).toBe(record);
  });

  test('a record of another start, or of an unknown one, has no date from it', () => {
    for (const record of [
      written(NOON - 40 * YEAR_MS, 20, false, 'before'),
      { ...written(NOON - 40 * YEAR_MS, 20, false), board: null },
    ])
      expect(redated(record, { ...NOON_AT_AN_HOUR, ofStart: null })).toBe(record);
  });
});

describe('a record of an earlier start, known to have been written before noon', () => {
  const told: Told = { ofStart: null, wasBeforeMs: NOON };

  test('that is dated a year later has a date nobody can believe', () => {
    const record = written(NOON + YEAR_MS, 20, true, 'before');
    expect(redated(record, told)).toEqual({ ...record, clockTrusted: false });
  });

  test('that is dated before stands', () => {
    const record = written(NOON - DAY_MS, 20, true, 'before');
    expect(redated(record, told)).toBe(record);
  });
});
