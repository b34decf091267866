import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calendarStart } from '../../../core/dosing/local-time.ts';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';
import { DAY_PARTS, spokenTime } from '../../../core/speech/spoken-day.ts';

const ZONE = 'Europe/Dublin';
// A Wednesday, 14:00 in Dublin.
const NOW = Date.UTC(2027, 3, 14, 13);

describe('a clear time as it is said', () => {
  test.each([
    [0, { day: { kind: 'today' }, part: 'evening' }],
    [4 * HOUR_MS, { day: { kind: 'today' }, part: 'evening' }],
    [4 * HOUR_MS + 1, { day: { kind: 'tomorrow' }, part: 'morning' }],
    [20 * HOUR_MS, { day: { kind: 'tomorrow' }, part: 'noon' }],
    [48 * HOUR_MS, { day: { kind: 'weekday', weekday: 5 }, part: 'evening' }],
    [6 * DAY_MS, { day: { kind: 'weekday', weekday: 2 }, part: 'evening' }],
    [7 * DAY_MS, { day: { kind: 'date', day: 21, month: 4 }, part: 'evening' }],
  ])('%d ms ahead', (ahead, said) => {
    expect(spokenTime(NOW + ahead, NOW, ZONE)).toEqual(said);
  });

  test('it is never before the instant, and no more than half a day after it, over changes of the clock too', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 * 24 * 60 }), (minutes) => {
        const at = NOW + minutes * 60_000;
        const { day, part } = spokenTime(at, NOW, ZONE);
        if (day.kind !== 'date') return;
        const year =
          new Date(at).getUTCFullYear() + (day.month === 1 && new Date(at).getUTCMonth() === 11 ? 1 : 0);
        const starts = calendarStart(year, day.month, day.day, ZONE) + DAY_PARTS[part] * HOUR_MS;
        expect(starts).toBeGreaterThanOrEqual(at - HOUR_MS);
        expect(starts - at).toBeLessThanOrEqual(13 * HOUR_MS);
      }),
    );
  });
});
