import { describe, expect, test } from 'vitest';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { liquidById } from '../../../core/medicine/formulary.ts';
import { expiresAt, type Opening, openBottle } from '../../../core/mixing/bottle.ts';
import { jugLife, remaining } from '../../../core/mixing/jug.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { NINE_OCLOCK, UP } from '../make/time.ts';

const DAY = 86_400_000;

function opening(over: Partial<Opening> = {}): Opening {
  const found = liquidById(SHIPPED, 'fenbendazole-100');
  if (found === undefined) throw new Error('no such liquid');
  return {
    ...found,
    id: 'bottle-9',
    number: 9,
    volume: millilitres(1000),
    expiry: { year: 2027, month: 12 },
    now: { uptimeMs: UP, wallMs: NINE_OCLOCK },
    timeZone: 'UTC',
    by: 'Kim',
    clockTrusted: true,
    ...over,
  };
}

describe('a bottle put in use', () => {
  test('has the strength of its label, as well known as a label is, and is full', () => {
    const bottle = openBottle(opening());
    expect(bottle.strength).toEqual({ unit: 'mg/mL', value: 100 });
    expect(bottle.relative).toBeCloseTo(0.05 / Math.sqrt(3), 3);
    expect(remaining(bottle).value).toBe(1000);
    expect([bottle.medicineId, bottle.packetId]).toEqual(['fenbendazole', 'fenbendazole-100']);
  });

  test('is good for its days open where its month lies further off', () => {
    expect(openBottle(opening()).useByMs).toBe(NINE_OCLOCK + 90 * DAY);
  });

  test('is good only to the end of its printed month where that is sooner', () => {
    const bottle = openBottle(opening({ expiry: { year: 2026, month: 5 } }));
    expect(bottle.useByMs).toBe(Date.UTC(2026, 5, 1));
    expect(jugLife(bottle, Date.UTC(2026, 5, 1) - 1)).toBe('in-life');
    expect(jugLife(bottle, Date.UTC(2026, 5, 1))).toBe('past-use-by');
  });

  test.each([
    [{ year: 2026, month: 12 }, 'UTC', Date.UTC(2027, 0, 1)],
    [{ year: 2026, month: 6 }, 'Europe/Dublin', Date.UTC(2026, 5, 30, 23)],
    [{ year: 2027, month: 2 }, 'America/New_York', Date.UTC(2027, 2, 1, 5)],
  ])('a printed month %j is over in %s when the next one begins there', (expiry, zone, over) => {
    expect(expiresAt(expiry, zone)).toBe(over);
  });
});
