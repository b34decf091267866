import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isMassUnit, shownMass } from '../../../hardware/scale/shown-mass.ts';

describe('the mass a scale shows', () => {
  it('takes its division from the last digit shown', () => {
    expect(shownMass('0012.34', false, 'kg')).toEqual({
      mass: { unit: 'g', value: 12340 },
      division: { unit: 'g', value: 10 },
    });
    expect(shownMass('943', false, 'g')?.division.value).toBe(1);
    expect(shownMass('12.', false, 'kg')?.division.value).toBe(1000);
  });

  it('shows a negative zero as plain zero', () => {
    expect(Object.is(shownMass('0.00', true, 'kg')?.mass.value, 0)).toBe(true);
    expect(shownMass('0.05', true, 'kg')?.mass.value).toBe(-50);
  });

  it.each([
    '',
    ' 1',
    '1 ',
    '+1',
    '-1',
    '1e3',
    '.5',
    '1..2',
    '1,2',
    'Infinity',
    'NaN',
    '0x10',
    '12345678901',
    '1.23456789012',
  ])('is none for %j', (digits) => {
    expect(shownMass(digits, false, 'kg')).toBeNull();
  });

  it('is the decimal itself in grams, for every number of up to five places', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 9_999_999 }),
        fc.integer({ min: 0, max: 5 }),
        (count, decimals) => {
          const digits = (count / 10 ** decimals).toFixed(decimals);
          expect(shownMass(digits, false, 'g')?.mass.value).toBe(Number(digits));
        },
      ),
    );
  });

  it('knows kg, g, lb and oz only as they are written', () => {
    expect(['kg', 'g', 'lb', 'oz'].every(isMassUnit)).toBe(true);
    expect(['KG', 'Kg', 't', '', 'kg ', 'toString', 'mL'].some(isMassUnit)).toBe(false);
  });
});
