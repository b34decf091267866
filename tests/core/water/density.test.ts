import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { grams, massIn } from '../../../core/quantity/mass.ts';
import { celsius } from '../../../core/quantity/temperature.ts';
import { millilitres, usCups, usQuarts } from '../../../core/quantity/volume.ts';
import { waterDensity, waterMass, waterReading, waterVolume } from '../../../core/water/density.ts';
import { DENSITY_KG_PER_M3, FOUR_CUPS_LB, QUART_OF_WATER } from '../../oracles/water.ts';

const degrees = fc.double({ min: 0, max: 40, noNaN: true });

describe('water', () => {
  test.each(DENSITY_KG_PER_M3)('at %d °C it weighs %d kg/m3, to seven digits', (degC, density) => {
    expect(waterDensity(celsius(degC)).toFixed(4)).toBe(density.toFixed(4));
  });

  test.each(QUART_OF_WATER)(
    'a quart at $celsius °C is $trueGrams g and reads $scaleGrams g in air',
    (row) => {
      const at = celsius(row.celsius);
      expect(Math.abs(waterMass(usQuarts(1), at).value - row.trueGrams)).toBeLessThan(0.0006);
      expect(Math.abs(waterReading(usQuarts(1), at).value - row.scaleGrams)).toBeLessThan(0.0006);
    },
  );

  test('a scale shows a quart as 945.3 g at 4 °C, 943.7 g at 20 °C and 942.6 g at 25 °C', () => {
    const shown = [4, 20, 25].map((degC) => waterReading(usQuarts(1), celsius(degC)).value.toFixed(1));
    expect(shown).toEqual(['945.3', '943.7', '942.6']);
  });

  test.each([-0.1, 40.1, Number.NaN])('%d °C is refused: the formula is not given there', (degC) => {
    expect(() => waterDensity(celsius(degC))).toThrow(RangeError);
  });

  test('the volume behind a reading is the volume that was poured', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 20_000, noNaN: true }), degrees, (ml, degC) => {
        const reading = waterReading(millilitres(ml), celsius(degC));
        expect(waterVolume(reading, celsius(degC)).value / ml).toBeCloseTo(1, 10);
      }),
    );
  });

  test('air always carries a little of the water, so a scale shows less than the true mass', () => {
    fc.assert(
      fc.property(degrees, (degC) => {
        const at = celsius(degC);
        const share = waterReading(usQuarts(1), at).value / waterMass(usQuarts(1), at).value;
        expect(share).toBeGreaterThan(0.9989);
        expect(share).toBeLessThan(0.999);
      }),
    );
  });

  test('no weighing is no water', () => {
    expect(waterVolume(grams(0), celsius(20)).value).toBe(0);
  });
});

describe('four US cups of water', () => {
  const fourCups = usCups(4);

  test('have a true mass of 2.0850 lb at 13.2 °C', () => {
    const pounds = massIn(waterMass(fourCups, celsius(FOUR_CUPS_LB.celsius)), 'lb');
    expect(pounds.toFixed(4)).toBe(FOUR_CUPS_LB.trueMass.toFixed(4));
  });

  test('never show more than 2.0842 lb on a scale in air, and do show more than 2.084', () => {
    const shown = Array.from({ length: 401 }, (_, i) =>
      massIn(waterReading(fourCups, celsius(i / 10)), 'lb'),
    );
    expect(Math.max(...shown)).toBeLessThan(FOUR_CUPS_LB.neverShownAbove);
    expect(Math.max(...shown)).toBeGreaterThan(2.084);
  });

  test('are told as 2.085 lb (common practice, no source), within 0.05 % of both', () => {
    const most = Math.max(
      ...Array.from({ length: 41 }, (_, degC) => massIn(waterReading(fourCups, celsius(degC)), 'lb')),
    );
    const trueMass = massIn(waterMass(fourCups, celsius(FOUR_CUPS_LB.celsius)), 'lb');
    for (const pounds of [most, trueMass]) {
      expect(Math.abs(FOUR_CUPS_LB.asTold / pounds - 1)).toBeLessThan(FOUR_CUPS_LB.agreesWithin);
    }
  });
});
