import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ONE_PACKET, planMix } from '../../../core/mixing/plan.ts';
import { celsius } from '../../../core/quantity/temperature.ts';
import { usQuarts } from '../../../core/quantity/volume.ts';
import { waterVolume } from '../../../core/water/density.ts';
import { DENSITY_KG_PER_M3, QUART_OF_WATER } from '../../oracles/water.ts';
import { makePacket } from '../make/regimen.ts';

const QUART = { perPacket: usQuarts(1), mode: 'make-up-to' } as const;

function planAt(degC: number) {
  return planMix('levamisole', makePacket(), QUART, ONE_PACKET, celsius(degC));
}

describe('the mix plan of the shipped packet', () => {
  const plan = planAt(20);

  test('makes up to one US quart, at 49.453 mg/mL', () => {
    expect(plan.recipe.mode).toBe('make-up-to');
    expect(plan.finalVolume.value).toBeCloseTo(946.352946, 6);
    expect(plan.strength.value).toBeCloseTo(49.453, 4);
  });

  test('asks for about 902 g of water at 20 °C, and then for the whole packet of 52 g', () => {
    // 52 g at 0.8 mL/g leave 904.75 mL for water; a quart reads 943.662 g at 20 °C.
    const expected = (943.662 * (946.352946 - 52 * 0.8)) / 946.352946;
    expect(plan.water.value).toBeCloseTo(expected, 2);
    expect(Math.round(plan.water.value)).toBe(902);
    expect(plan.powder.value).toBe(52);
  });

  test('leaves room for the powder: the target is well below a plain quart at every temperature', () => {
    for (const { celsius: degC, scaleGrams } of QUART_OF_WATER) {
      const { water } = planAt(degC);
      expect(scaleGrams - water.value).toBeGreaterThan(52 * 0.7 * 0.99);
      expect(scaleGrams - water.value).toBeLessThan(52 * 0.88);
    }
  });

  test('water and powder together fill the final volume, at any temperature', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 40, noNaN: true }), (degC) => {
        const { water, powderVolume, finalVolume } = planAt(degC);
        expect(waterVolume(water, celsius(degC)).value + powderVolume.value).toBeCloseTo(
          finalVolume.value,
          6,
        );
      }),
    );
  });

  test('the strength does not depend on the temperature the water was weighed at', () => {
    for (const [degC] of DENSITY_KG_PER_M3) {
      expect(planAt(degC).strength.value).toBeCloseTo(49.453, 4);
    }
  });

  test('the active sets the strength, not the gross mass of the packet', () => {
    expect(plan.strength.value).not.toBeCloseTo(54.95, 1);
  });
});
