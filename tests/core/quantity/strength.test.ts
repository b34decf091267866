import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import {
  activeFor,
  mgPerKg,
  mgPerMl,
  rateDelivered,
  strengthOf,
  volumeHolding,
} from '../../../core/quantity/strength.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { CONCENTRATE, MIXES, PACKET_MG } from '../../oracles/levamisole-table.ts';

const positive = fc.double({ min: 0.01, max: 1000, noNaN: true });

describe('strength', () => {
  test('46.8 g made up to a US quart is 49.453 mg/mL', () => {
    expect(strengthOf(grams(46.8), millilitres(946.352946)).value).toBeCloseTo(49.453, 4);
  });

  test.each(Object.entries(MIXES))('46.8 g in the mix "%s" has the strength of the table', (_, mix) => {
    expect(strengthOf(grams(PACKET_MG / 1000), millilitres(mix.ml)).value).toBeCloseTo(mix.mgPerMl, 3);
  });

  test('544.5 g to the 3 L mark is 181.5 mg/mL', () => {
    expect(strengthOf(grams(CONCENTRATE.mg / 1000), millilitres(CONCENTRATE.ml)).value).toBe(
      CONCENTRATE.mgPerMl,
    );
  });

  test.each([0, -1, Number.NaN])('a strength or a rate of %d is refused', (value) => {
    expect(() => mgPerMl(value)).toThrow(RangeError);
    expect(() => mgPerKg(value)).toThrow(RangeError);
  });

  test('a strength in no volume at all is refused', () => {
    expect(() => strengthOf(grams(1), millilitres(0))).toThrow(RangeError);
  });

  test('the rate delivered by the volume worked out is the rate asked for', () => {
    fc.assert(
      fc.property(positive, positive, positive, (kg, rate, strength) => {
        const volume = volumeHolding(activeFor(kilograms(kg), mgPerKg(rate)), mgPerMl(strength));
        expect(rateDelivered(volume, mgPerMl(strength), kilograms(kg)).value / rate).toBeCloseTo(1, 9);
      }),
    );
  });
});
