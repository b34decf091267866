import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { grams, kilograms, massFrom, massIn, ounces, pounds } from '../../../core/quantity/mass.ts';
import { celsius, fahrenheit } from '../../../core/quantity/temperature.ts';
import { millilitres, usCups, usFluidOunces, usGallons, usQuarts } from '../../../core/quantity/volume.ts';
import { FAHRENHEIT_CELSIUS, GRAMS_IN, MG_PER_KG_IN_MG_PER_LB, MILLILITRES_IN } from '../../oracles/units.ts';

describe('conversions', () => {
  test('a pound, an ounce and a kilogram have their exact masses', () => {
    expect(pounds(1).value).toBe(GRAMS_IN.lb);
    expect(ounces(1).value).toBe(GRAMS_IN.oz);
    expect(kilograms(1).value).toBe(GRAMS_IN.kg);
    expect(ounces(16).value).toBe(pounds(1).value);
  });

  test('the US gallon, quart, cup and fluid ounce have their exact volumes', () => {
    expect(usGallons(1).value).toBeCloseTo(MILLILITRES_IN['US gallon'], 9);
    expect(usQuarts(1).value).toBeCloseTo(MILLILITRES_IN['US quart'], 9);
    expect(usCups(1).value).toBeCloseTo(MILLILITRES_IN['US cup'], 9);
    expect(usFluidOunces(1).value).toBeCloseTo(MILLILITRES_IN['US fl oz'], 9);
    expect(millilitres(1).value).toBe(1);
  });

  test('what is put in as a unit comes out as the same number of it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 5000, noNaN: true }),
        fc.constantFrom('g', 'kg', 'lb', 'oz'),
        (value, unit) => {
          expect(massIn(massFrom(value, unit), unit) / value).toBeCloseTo(1, 12);
        },
      ),
    );
    expect(grams(5)).toEqual({ unit: 'g', value: 5 });
  });

  test.each(MG_PER_KG_IN_MG_PER_LB)('%d mg/kg is %d mg/lb', (mgPerKg, mgPerLb, decimals) => {
    expect((mgPerKg * massIn(pounds(1), 'kg')).toFixed(decimals)).toBe(mgPerLb.toFixed(decimals));
  });

  test.each(FAHRENHEIT_CELSIUS)('%d °F is %d °C', (degreesF, degreesC) => {
    expect(fahrenheit(degreesF).value).toBeCloseTo(degreesC, 5);
    expect(celsius(degreesC)).toEqual({ unit: 'degC', value: degreesC });
  });
});
