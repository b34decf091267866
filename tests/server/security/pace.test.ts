import { expect, test } from 'vitest';
import { Pace } from '../../../server/security/pace.ts';

test('so many at once, then so many a second', () => {
  const pace = new Pace(2, 5);
  const allowed = (nowMs: number) =>
    Array.from({ length: 10 }, () => pace.allows('a', nowMs)).filter(Boolean).length;
  expect([allowed(0), allowed(500), allowed(1000), allowed(60_000)]).toEqual([5, 1, 1, 5]);
});

test('a flood of machines takes no more memory than a few', () => {
  const pace = new Pace(1, 1);
  for (let i = 0; i < 10_000; i += 1) pace.allows(`10.0.${i}`, i);
  expect(pace.size).toBe(256);
});
