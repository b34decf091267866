import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { achievedStrength } from '../../../core/mixing/achieved.ts';
import { doubtAhead, pourBand, STRENGTH_BUDGET } from '../../../core/mixing/band.ts';
import { ONE_PACKET, type PowderAmount, planMix } from '../../../core/mixing/plan.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { celsius } from '../../../core/quantity/temperature.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { makePacket } from '../make/regimen.ts';

const packet = makePacket();
const JUG = grams(300);

function planOf(amount: PowderAmount = ONE_PACKET, perPacketMl = 946.352946) {
  const recipe = { perPacket: millilitres(perPacketMl), mode: 'make-up-to' as const };
  return planMix('levamisole', packet, recipe, amount, celsius(20));
}

function bandOf(division: number, amount?: PowderAmount, perPacketMl?: number) {
  return pourBand(planOf(amount, perPacketMl), packet, JUG, grams(division))?.value ?? null;
}

describe('the band of a pour', () => {
  test('is as wide as the mix is doubted by anyway: 1.2 % of a quart on a 1 g scale', () => {
    const doubt = doubtAhead(planOf(), packet, JUG, grams(1));
    expect(doubt).toBeCloseTo(0.012, 3);
    expect(bandOf(1)).toBeCloseTo(doubt * 946.353 * 0.99715, 2);
  });

  test('is narrower on a finer scale', () => {
    expect(bandOf(0.1)).toBeLessThan(bandOf(1) ?? 0);
  });

  test('narrows again where a coarse scale has used up the budget, then there is none', () => {
    expect(bandOf(2)).toBeLessThan(bandOf(1) ?? 0);
    expect(bandOf(5)).toBeNull();
  });

  test('half a packet cannot be weighed in on a 1 g scale, but on one of 0.2 g', () => {
    const half = { kind: 'weighed', share: 0.5 } as const;
    expect(bandOf(1, half)).toBeNull();
    expect(bandOf(0.2, half)).toBeGreaterThan(0.2);
  });

  test('keeps the strength within the budget at both of its ends, whatever is mixed', () => {
    const amounts: PowderAmount[] = [
      ...[1, 2, 3, 4].map((count) => ({ kind: 'packets' as const, count })),
      ...[0.25, 0.5, 0.75].map((share) => ({ kind: 'weighed' as const, share })),
    ];
    let bands = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...amounts),
        fc.double({ min: 473, max: 3785, noNaN: true }),
        fc.constantFrom(0.1, 0.2, 0.5, 1, 2, 5),
        (amount, perPacketMl, division) => {
          const plan = planOf(amount, perPacketMl);
          const band = pourBand(plan, packet, JUG, grams(division));
          if (band === null) return;
          bands += 1;
          const doubt = doubtAhead(plan, packet, JUG, grams(division));
          for (const end of [-1, 1]) {
            const water = {
              mass: grams(plan.water.value + end * band.value),
              uncertainty: grams(0),
              temperature: plan.temperature,
            };
            const strength = achievedStrength(packet, plan.powder, water).strength.value;
            const off = Math.abs(strength / plan.strength.value - 1);
            // A quotient is not quite a difference: half a thousandth of the strength at 2 % off.
            expect(off + 2 * doubt).toBeLessThan(STRENGTH_BUDGET + 0.0006);
          }
        },
      ),
    );
    expect(bands).toBeGreaterThan(30);
  });
});
