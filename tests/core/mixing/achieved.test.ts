import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { achievedStrength, withPowderSeen } from '../../../core/mixing/achieved.ts';
import { ONE_PACKET, planMix } from '../../../core/mixing/plan.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { celsius } from '../../../core/quantity/temperature.ts';
import { usQuarts } from '../../../core/quantity/volume.ts';
import { makePacket } from '../make/regimen.ts';

const packet = makePacket();

function achieved(waterGrams: number, doubtGrams = 1, degC = 20) {
  return achievedStrength(packet, grams(52), {
    mass: grams(waterGrams),
    uncertainty: grams(doubtGrams),
    temperature: celsius(degC),
  });
}

describe('the strength a jug came to', () => {
  test('is the strength of the plan when the plan was met', () => {
    const quart = { perPacket: usQuarts(1), mode: 'make-up-to' } as const;
    const plan = planMix('levamisole', packet, quart, ONE_PACKET, celsius(20));
    const got = achieved(plan.water.value);
    expect(got.strength.value).toBeCloseTo(plan.strength.value, 6);
    expect(got.finalVolume.value).toBeCloseTo(plan.finalVolume.value, 6);
  });

  test('with a plain quart of water added to, not made up, is about 4 % weaker', () => {
    const share = achieved(943.662).strength.value / 49.453;
    // The final volume is a quart and 41.6 mL: 946.35 / 987.95.
    expect(share).toBeCloseTo(946.352946 / (946.352946 + 41.6), 4);
    expect(share).toBeGreaterThan(0.9541);
    expect(share).toBeLessThan(0.963);
  });

  test('holds exactly the active of one packet, however much water went in', () => {
    fc.assert(
      fc.property(fc.double({ min: 200, max: 6000, noNaN: true }), (water) => {
        const { strength, finalVolume } = achieved(water);
        expect(strength.value * finalVolume.value).toBeCloseTo(46_800, 4);
      }),
    );
  });

  test('falls as more water is poured', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 200, max: 5000, noNaN: true }),
        fc.double({ min: 0.5, max: 1000, noNaN: true }),
        (water, more) => {
          expect(achieved(water + more).strength.value).toBeLessThan(achieved(water).strength.value);
        },
      ),
    );
  });

  test('carries at least the half percent that the powder’s own volume is unsure of', () => {
    const { relative, contributions } = achieved(902.2, 0.4);
    const powder = contributions.find((part) => part.of === 'volume of the powder');
    // Half of (0.88 - 0.70) mL/g on 52 g, rectangular, over a quart.
    expect(powder?.relative).toBeCloseTo((52 * 0.09) / Math.sqrt(3) / 946.353, 5);
    expect(relative).toBeGreaterThan(0.004);
    expect(relative).toBeLessThan(0.01);
  });

  test('a less sure weighing never makes the strength surer', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (doubt, more) => {
          expect(achieved(902, doubt + more).relative).toBeGreaterThanOrEqual(achieved(902, doubt).relative);
        },
      ),
    );
  });

  test('water believed to be at 40 °C is not thereby known to the degree', () => {
    const at = (degC: number): number =>
      achieved(902, 1, degC).contributions.find((part) => part.of === 'water temperature')?.relative ?? 0;
    expect(at(40)).toBeGreaterThan(0.5 * at(36));
  });
});

describe('the strength once the powder was seen', () => {
  test('keeps its value and is less sure the further the rise was from the packet', () => {
    const before = achieved(902);
    const seen = (rise: number) => withPowderSeen(before, grams(52), grams(rise), grams(1));
    expect(seen(52).strength).toEqual(before.strength);
    expect(seen(52).relative).toBeGreaterThan(before.relative);
    expect(seen(49).relative).toBeGreaterThan(seen(50).relative);
    // 3 g of 52 g missing, anywhere within that (rectangular): 3 / 52 / sqrt 3 is 3.33 % on its own.
    expect(seen(49).relative).toBeGreaterThan(0.0333);
  });
});
