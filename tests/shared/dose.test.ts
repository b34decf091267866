import { describe, expect, test } from 'vitest';
import { OfferView, TreatmentView } from '../../shared/dose.ts';
import { OFFER, TREATMENT } from './make.ts';

const NUMBERS = [
  'volumeMl',
  'exactVolumeMl',
  'syringeCapacityMl',
  'syringeGraduationMl',
  'draws',
  'strengthMgPerMl',
  'targetMgPerKg',
  'weightGrams',
  'weightUncertaintyGrams',
] as const satisfies readonly (keyof OfferView & keyof TreatmentView)[];

describe.each([
  ['an offer', OfferView, OFFER],
  ['a treatment', TreatmentView, TREATMENT],
] as const)('%s', (_, schema, example) => {
  const accepts = (over: object): boolean => schema.safeParse({ ...example, ...over }).success;

  test('passes as it is, unchanged', () => {
    expect(schema.parse(example)).toEqual(example);
  });

  test('is refused with a key nobody knows, at the top and within', () => {
    expect(accepts({ volumeCc: 3.3 })).toBe(false);
    expect(accepts({ deliveredMgPerKg: { ...example.deliveredMgPerKg, k: 2 } })).toBe(false);
  });

  test.each(NUMBERS)('is refused with a %s that is no number', (key) => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, '3.3', null, undefined]) {
      expect(accepts({ [key]: value })).toBe(false);
    }
  });

  test('is refused with any of its numbers negative', () => {
    expect(NUMBERS.filter((key) => accepts({ [key]: -1 }))).toEqual([]);
  });

  test('is refused by another route, for another species, with half a draw or with none', () => {
    expect(accepts({ route: 'injection' })).toBe(false);
    expect(accepts({ species: 'horse' })).toBe(false);
    expect(accepts({ draws: 1.5 })).toBe(false);
    expect(accepts({ draws: 0 })).toBe(false);
  });

  test('is refused with any one of its parts missing', () => {
    for (const key of Object.keys(example)) expect(accepts({ [key]: undefined })).toBe(false);
  });
});

describe('a clear time', () => {
  const clear = (meatClear: object): boolean => TreatmentView.safeParse({ ...TREATMENT, meatClear }).success;

  test('is a moment, never, or unknown, and unknown carries no moment', () => {
    expect(clear({ kind: 'not-for-people' })).toBe(true);
    expect(clear({ kind: 'unknown' })).toBe(true);
    expect(clear({ kind: 'unknown', at: '2026-05-05T09:01:00.000Z' })).toBe(false);
    expect(clear({ kind: 'at' })).toBe(false);
    expect(clear({ kind: 'hours', hours: 0 })).toBe(false);
  });
});
