import { expect, test } from 'vitest';
import { checkStanding, type ScaleChecking } from '../../../core/checking/standing.ts';
import { CHECKED } from '../make/scale-check.ts';
import { hoursAgo, NINE_OCLOCK } from '../make/time.ts';

function standing(days: number, over: Partial<NonNullable<ScaleChecking['last']>> = {}, trusted = true) {
  const last = { verdict: 'passed', atMs: hoursAgo(24 * days), clockTrusted: true, ...over } as const;
  return checkStanding({ ...CHECKED, last }, NINE_OCLOCK, trusted);
}

test.each([
  [0, 'fresh'],
  [30, 'fresh'],
  [30.001, 'due'],
  [60, 'due'],
  [60.001, 'overdue'],
  [4000, 'overdue'],
  [-3, 'fresh'],
] as const)('a check passed %d days ago, good for 30, is %s', (days, expected) => {
  expect(standing(days)).toBe(expected);
});

test('a failed check stays failed at any age and under any clock', () => {
  for (const days of [0, 45, 400]) expect(standing(days, { verdict: 'failed' })).toBe('failed');
  expect(standing(1, { verdict: 'failed', clockTrusted: false }, false)).toBe('failed');
});

test('a pass without a known date is undated, and under an untrusted clock no age is guessed', () => {
  expect(standing(1, { clockTrusted: false })).toBe('undated');
  expect(standing(90, {}, false)).toBe('fresh');
});

test('a scale never checked is never', () => {
  expect(checkStanding({ ...CHECKED, last: null }, NINE_OCLOCK, true)).toBe('never');
});
