import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keepSame } from '../../kiosk/connection/keep-same.ts';
import { BASE } from './preview/base-state.ts';

test('whatever the old value, the new one says the same as before', () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), (before, after) => {
      expect(keepSame(before, after)).toEqual(after);
    }),
  );
});

test('an equal value is the old one itself', () => {
  fc.assert(
    fc.property(fc.jsonValue({ noUnicodeString: true }), (value) => {
      expect(keepSame(value, structuredClone(value))).toBe(value);
    }),
  );
});

test('of a list only the members that changed are new, wherever they stand now', () => {
  const before = [
    { id: 'a', grams: 1 },
    { id: 'b', grams: 2 },
    { id: 'c', grams: 3 },
  ];
  const after = keepSame(before, [
    { id: 'c', grams: 3 },
    { id: 'a', grams: 1 },
    { id: 'b', grams: 9 },
  ]);
  expect(after[0]).toBe(before[2]);
  expect(after[1]).toBe(before[0]);
  expect(after[2]).toEqual({ id: 'b', grams: 9 });
});

test('a key that went is gone, and one that turned to nothing is nothing', () => {
  expect(keepSame({ a: 1, b: 2 }, { a: 1 })).toEqual({ a: 1 });
  expect(keepSame({ a: { b: 1 } }, { a: null })).toEqual({ a: null });
});

test('a weight that moves leaves the rest of a whole state as it was', () => {
  const fresh = { ...structuredClone(BASE), platform: { ...BASE.platform, live: 4321 } };
  const kept = keepSame(BASE, fresh);
  expect(kept.platform.live).toBe(4321);
  expect(kept.shed).toBe(BASE.shed);
  expect(kept.animals).toBe(BASE.animals);
});
