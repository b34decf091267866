import { expect, test } from 'vitest';
import { KNOWN_LOADS, knownLoad } from '../../../core/proving/known-load.ts';
import { canProve, proofOf } from '../../../core/proving/proof.ts';
import { grams, kilograms, massFrom, pounds } from '../../../core/quantity/mass.ts';

const FINE = grams(10);

test.each([
  [20, 20],
  [20.9, 20],
  [19, 20],
])('%s kg shown for %s kg is right: bags and bottles are not exact', (shown, known) => {
  expect(proofOf(kilograms(shown), kilograms(known), FINE, 'kg')).toEqual({ verdict: 'right' });
});

test('a scale that counts in coarse steps is right within one of them', () => {
  expect(proofOf(kilograms(5.5), kilograms(5), kilograms(0.5), 'kg')).toEqual({ verdict: 'right' });
});

// 44.1 lb are 20.003 kg (0.45359237 kg a pound, exact).
test.each([
  ['44.1 read as kilograms', kilograms(44.1), kilograms(20), 'kg', 'lb'],
  ['20 read as pounds', pounds(20), kilograms(20), 'lb', 'kg'],
  [
    '11.34 read as kilograms for 25 lb is right in no other way than',
    massFrom(25, 'kg'),
    pounds(25),
    'kg',
    'lb',
  ],
  ['35.3 read as grams', grams(35.3), kilograms(1), 'g', 'oz'],
  ['1 read as grams', grams(1), kilograms(1), 'g', 'kg'],
] as const)('%s looks like %s', (_what, shown, known, read, is) => {
  expect(proofOf(shown, known, grams(shown.value / 1000), read)).toEqual({ verdict: 'other-unit', read, is });
});

test('without a unit named the pair of units is found by itself', () => {
  expect(proofOf(kilograms(44.1), kilograms(20), FINE, null)).toMatchObject({ verdict: 'other-unit' });
});

test.each([
  [0, 20],
  [30, 20],
  [-20, 20],
])('%s kg shown for %s kg is wrong in any unit', (shown, known) => {
  expect(proofOf(kilograms(shown), kilograms(known), FINE, 'kg')).toEqual({ verdict: 'wrong' });
});

test('a load counts from five divisions', () => {
  expect(canProve(kilograms(5), kilograms(1))).toBe(true);
  expect(canProve(kilograms(5), kilograms(1.01))).toBe(false);
});

test('every load has a name of its own and a mass within reach of a barn', () => {
  for (const role of ['platform', 'bench'] as const) {
    const ids = KNOWN_LOADS[role].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { mass } of KNOWN_LOADS[role]) expect(mass.value).toBeGreaterThanOrEqual(100);
  }
  expect(knownLoad('platform', 'g-100')).toBeUndefined();
  expect(knownLoad('bench', 'L-1')?.mass).toEqual(kilograms(1));
});
