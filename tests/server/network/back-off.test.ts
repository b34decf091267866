import { expect, test } from 'vitest';
import { BackOff } from '../../../server/network/back-off.ts';

test('two wrong tries are free, then each wait is twice the one before, up to a quarter of an hour', () => {
  const backOff = new BackOff();
  let now = 0;
  const waits = Array.from({ length: 12 }, () => {
    backOff.tried(['a'], now);
    const wait = backOff.waitMs(['a'], now);
    now += wait;
    return wait / 1000;
  });
  expect(waits).toEqual([0, 0, 10, 20, 40, 80, 160, 320, 640, 900, 900, 900]);
});

test('whoever has two names waits for the longer of them, and no other with it', () => {
  const backOff = new BackOff();
  for (let i = 0; i < 4; i += 1) backOff.tried(['person Wren'], 0);
  expect(backOff.waitMs(['device 1', 'person Wren'], 0)).toBe(20_000);
  expect(backOff.waitMs(['device 1', 'person Finch'], 0)).toBe(0);
});

test('a right try forgets the wrong ones', () => {
  const backOff = new BackOff();
  for (let i = 0; i < 9; i += 1) backOff.tried(['a'], 0);
  backOff.right(['a']);
  backOff.tried(['a'], 0);
  expect(backOff.waitMs(['a'], 0)).toBe(0);
});
