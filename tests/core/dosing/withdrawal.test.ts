import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clearAfter } from '../../../core/dosing/withdrawal.ts';
import type { Withdrawal } from '../../../core/medicine/withdrawal.ts';
import { NINE_OCLOCK } from '../make/time.ts';

const hours = (value: number): Withdrawal => ({
  kind: 'hours',
  hours: value,
  evidence: 'secondary',
  source: 'a chart',
});
const days = (value: number): Withdrawal => ({
  kind: 'days',
  days: value,
  evidence: 'primary',
  source: 'a label',
});
/** Clocks went forward on 2026-03-29 at 01:00 UTC and back on 2026-10-25 at 01:00 UTC. */
const ZONE = 'Europe/Dublin';

function at(withdrawal: Withdrawal, givenAtMs: number, zone = ZONE): number {
  const clear = clearAfter(withdrawal, givenAtMs, zone);
  return clear.kind === 'at' ? clear.atMs : Number.NaN;
}

describe('clear times', () => {
  test('hours are counted to the minute from the giving', () => {
    expect(clearAfter(hours(96), NINE_OCLOCK, 'UTC')).toEqual({
      kind: 'at',
      atMs: Date.UTC(2026, 4, 5, 9),
    });
  });

  test('hours are exact over a change of the clock: 48 hours are 48 hours', () => {
    const before = Date.UTC(2026, 2, 28, 9);
    expect(at(hours(48), before)).toBe(Date.UTC(2026, 2, 30, 9));
  });

  test.each([
    // Nine in the morning in winter is 09:00 UTC, in summer 08:00 UTC.
    ['forward', Date.UTC(2026, 2, 28, 9), 2, Date.UTC(2026, 2, 30, 8)],
    ['back', Date.UTC(2026, 9, 24, 8), 2, Date.UTC(2026, 9, 26, 9)],
    ['not at all', Date.UTC(2026, 5, 1, 8), 7, Date.UTC(2026, 5, 8, 8)],
  ])('days end at the same time of day where the clock goes %s', (_where, given, count, clear) => {
    expect(at(days(count), given)).toBe(clear);
  });

  test('a day that ends in the hour the clock leaves out ends after it', () => {
    // 01:30 on 28 March; on the 29th there is no 01:30.
    expect(at(days(1), Date.UTC(2026, 2, 28, 1, 30))).toBe(Date.UTC(2026, 2, 29, 1, 30));
  });

  test('a day that ends in the hour the clock shows twice ends the second time', () => {
    // 01:30 summer time on 24 October; on the 25th it is 01:30 at 00:30 UTC and again at 01:30 UTC.
    expect(at(days(1), Date.UTC(2026, 9, 24, 0, 30))).toBe(Date.UTC(2026, 9, 25, 1, 30));
  });

  test('unknown stays unknown and never becomes now', () => {
    expect(clearAfter({ kind: 'unknown', source: 'none read' }, NINE_OCLOCK, ZONE)).toEqual({
      kind: 'unknown',
    });
  });

  test('not for people has no end', () => {
    expect(clearAfter({ kind: 'not-for-people', source: 'no tolerance' }, NINE_OCLOCK, ZONE)).toEqual({
      kind: 'not-for-people',
    });
  });

  test('a longer withdrawal never clears sooner', () => {
    fc.assert(
      fc.property(fc.nat(9000), fc.nat(9000), (count, more) => {
        expect(at(hours(count + more), NINE_OCLOCK)).toBeGreaterThanOrEqual(at(hours(count), NINE_OCLOCK));
        expect(at(hours(count), NINE_OCLOCK)).toBeGreaterThanOrEqual(NINE_OCLOCK);
      }),
    );
  });

  test.each(['UTC', ZONE, 'America/New_York', 'Australia/Lord_Howe', 'Asia/Kathmandu', 'Pacific/Apia'])(
    'in %s days are within an hour and a half of whole ones, and a longer one never clears sooner',
    (zone) => {
      const instant = fc.integer({ min: Date.UTC(2015, 0, 1), max: Date.UTC(2035, 0, 1) });
      fc.assert(
        fc.property(instant, fc.integer({ min: 1, max: 400 }), (given, count) => {
          const clear = at(days(count), given, zone);
          expect(Math.abs(clear - given - count * 86_400_000)).toBeLessThanOrEqual(5_400_000);
          expect(at(days(count + 1), given, zone)).toBeGreaterThan(clear);
        }),
        { numRuns: 60 },
      );
    },
  );
});
