import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';
import { backupDate, backupName, backupsToDrop, STAY } from '../../../server/upkeep/rotation.ts';

const NOON = Date.UTC(2027, 3, 12, 12);
const daily = (days: number, from = 0) =>
  Array.from({ length: days }, (_, i) => backupName(NOON - (from + i) * DAY_MS, true));

test('the name of a backup gives its date back', () => {
  expect(backupName(NOON, true)).toBe('byreside-20270412T120000Z.sqlite');
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 4_000_000_000 }), fc.boolean(), (seconds, trusted) => {
      expect(backupDate(backupName(seconds * 1000, trusted))).toEqual({ atMs: seconds * 1000, trusted });
    }),
  );
});

test('what has another name is nobody’s business', () => {
  for (const name of [
    'holiday.jpg',
    'byreside.sqlite',
    'byreside-2027.sqlite',
    '.byreside-20270412T120000Z.sqlite.part',
  ])
    expect(backupDate(name)).toBeNull();
  expect(backupsToDrop(['holiday.jpg', ...daily(3)])).toEqual([]);
});

describe('of a copy a day', () => {
  test('a week stays whole', () => {
    expect(backupsToDrop(daily(7))).toEqual([]);
  });

  test('after three years there are days, weeks and months, and no more', () => {
    const all = daily(3 * 365);
    const dropped = new Set(backupsToDrop(all));
    const kept = all.filter((name) => !dropped.has(name));
    expect(kept.slice(0, STAY.days)).toEqual(daily(7));
    expect(kept.length).toBeLessThanOrEqual(STAY.days + STAY.weeks + STAY.months);
    const oldest = backupDate(kept.at(-1) ?? '')?.atMs ?? 0;
    expect(NOON - oldest).toBeGreaterThan(300 * DAY_MS);
    expect(NOON - oldest).toBeLessThan(366 * DAY_MS);
  });

  test('made and rotated day by day it comes to the same', () => {
    let there: string[] = [];
    for (let day = 400; day >= 0; day -= 1) {
      there.push(backupName(NOON - day * DAY_MS, true));
      const drop = new Set(backupsToDrop(there));
      there = there.filter((name) => !drop.has(name));
    }
    const months = new Set(there.map((name) => name.slice(0, 'byreside-202704'.length)));
    expect(months.size).toBeGreaterThanOrEqual(STAY.months);
    expect(there.length).toBeLessThanOrEqual(STAY.days + STAY.weeks + STAY.months);
  });
});

test('the newest always stays, whatever else there is', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer({ min: 0, max: 20_000 }), { minLength: 1 }), (hours) => {
      const names = hours.map((hour) => backupName(NOON - hour * HOUR_MS, true));
      const newest = backupName(NOON - Math.min(...hours) * HOUR_MS, true);
      expect(backupsToDrop(names)).not.toContain(newest);
    }),
  );
});

test('copies whose date nobody trusts push out none that have one', () => {
  const undated = Array.from({ length: 9 }, (_, i) => backupName(NOON + i * 365 * DAY_MS, false));
  const dropped = backupsToDrop([...daily(7), ...undated]);
  expect(dropped).toHaveLength(6);
  expect(dropped.every((name) => name.endsWith('-undated.sqlite'))).toBe(true);
});
