import { expect, test, vi } from 'vitest';
import { keptIn } from '../../core/kept-in.ts';

test('makes what a key has once, and keeps it', () => {
  const map = new Map<string, { name: string }>();
  const make = vi.fn(() => ({ name: 'Clover' }));
  const made = keptIn(map, 'a', make);
  expect(keptIn(map, 'a', make)).toBe(made);
  expect(make).toHaveBeenCalledTimes(1);
  expect(keptIn(map, 'b', make)).not.toBe(made);
});

test('keeps nothing where the making fails', () => {
  const map = new Map<string, string>();
  const fail = () => {
    throw new RangeError('no such zone');
  };
  expect(() => keptIn(map, 'a', fail)).toThrow('no such zone');
  expect(map.size).toBe(0);
});
