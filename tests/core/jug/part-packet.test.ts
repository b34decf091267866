import { describe, expect, test } from 'vitest';
import { reduceMixing } from '../../../core/jug/reduce.ts';
import type { Mixing, MixingAt } from '../../../core/jug/state.ts';
import { STRENGTH_BUDGET } from '../../../core/mixing/band.ts';
import { JUG_GRAMS, mixingAt, mixingWorld, onScaleOf, pourOf, standsAt } from '../make/mixing.ts';

/** Half a packet in half a quart, on a scale of 0.1 g. */
const HALF = pourOf({ amount: { kind: 'weighed', share: 0.5 } }, 0.1);
const WATER = HALF.plan.water.value;

function withPowder(rise: number): Mixing {
  const onBench = JUG_GRAMS + WATER;
  const poured = reduceMixing(HALF, { type: 'poured', deliberate: false }, onScaleOf(0.1, onBench));
  const powder: MixingAt<'powder'> = standsAt(poured, 'powder');
  return reduceMixing(powder, { type: 'weighed' }, onScaleOf(0.1, onBench + rise)).mixing;
}

function take(rise: number, deliberate = false) {
  const world = onScaleOf(0.1, JUG_GRAMS + WATER + rise);
  return reduceMixing(withPowder(rise), { type: 'powder-in', deliberate }, world);
}

describe('half a packet, weighed in', () => {
  test('goes with half the volume, at the same strength', () => {
    expect(HALF.plan.powder.value).toBe(26);
    expect(HALF.plan.finalVolume.value).toBeCloseTo(473.176, 3);
    expect(HALF.plan.strength.value).toBeCloseTo(49.453, 3);
  });

  test.each([
    [0, 'none'],
    [13, 'part'],
    [26, 'whole'],
    [30, 'too-much'],
  ])('of %d g is "%s", and waits for a press', (rise, verdict) => {
    expect(withPowder(rise)).toMatchObject({ step: 'powder', verdict });
  });

  test('makes the strength that the powder really in makes, active by its share', () => {
    const { achieved } = standsAt(take(27), 'dissolve');
    // 27 of 52 g hold 24.3 g of active; the water is 473.176 mL less 26 g of powder at 0.8 mL/g.
    const volume = 473.176473 - 26 * 0.8 + 27 * 0.8;
    expect(achieved.strength.value).toBeCloseTo(24_300 / volume, 3);
  });

  test('knows its strength within the budget, and less well than a whole packet', () => {
    const { achieved } = standsAt(take(26), 'dissolve');
    expect(2 * achieved.relative).toBeLessThan(STRENGTH_BUDGET);
    expect(achieved.contributions.map(({ of }) => of)).toContain('powder weighed');
    expect(achieved.contributions.map(({ of }) => of)).toContain('evenness of the powder');
  });

  test.each([20, 22, 33, 52])(
    'with %d g in ends in an ask, and by a held press the strength follows',
    (rise) => {
      expect(take(rise).refused).toBe('powder-far-off');
      const { achieved } = standsAt(take(rise, true), 'dissolve');
      expect(achieved.strength.value / 49.453).toBeCloseTo(rise / 26, 0);
    },
  );

  test('forgotten is refused, held press or not', () => {
    expect(take(0).refused).toBe('no-powder-seen');
    expect(take(0, true).refused).toBe('no-powder-seen');
  });

  test('so short that the scale no longer knows it within the budget is refused, held press or not', () => {
    expect(take(8).refused).toBe('scale-too-coarse');
    expect(take(8, true).refused).toBe('scale-too-coarse');
  });

  test('is not weighed in on a scale that is too coarse for it', () => {
    expect(() => pourOf({ amount: { kind: 'weighed', share: 0.5 } }, 1)).toThrow('scale-too-coarse');
    expect(() => pourOf({ amount: { kind: 'weighed', share: 0.25 } }, 0.5)).toThrow('scale-too-coarse');
  });
});

describe('several packets', () => {
  const three = pourOf({ amount: { kind: 'packets', count: 3 } });

  test('go with as many times the volume, at the same strength', () => {
    expect(three.plan.finalVolume.value).toBeCloseTo(3 * 946.352946, 6);
    expect(three.plan.strength.value).toBeCloseTo(49.453, 3);
  });

  test.each([
    [52, 'part'],
    [104, 'part'],
  ])('are waited for: %d g of 156 are a part', (rise, verdict) => {
    const onBench = JUG_GRAMS + three.plan.water.value;
    const poured = reduceMixing(three, { type: 'poured', deliberate: false }, mixingWorld(onBench)).mixing;
    expect(reduceMixing(poured, { type: 'weighed' }, mixingWorld(onBench + rise)).mixing).toMatchObject({
      verdict,
    });
    expect(reduceMixing(poured, { type: 'weighed' }, mixingWorld(onBench + 156)).mixing.step).toBe(
      'dissolve',
    );
  });
});

describe('the amount and the volume', () => {
  test.each([
    { kind: 'packets', count: 0 },
    { kind: 'packets', count: 5 },
    { kind: 'packets', count: 1.5 },
    { kind: 'weighed', share: 0.05 },
    { kind: 'weighed', share: 5 },
  ] as const)('of $kind $count $share is refused', (amount) => {
    const step = reduceMixing(mixingAt('dilution'), { type: 'amount', amount }, mixingWorld(0));
    expect(step.refused).toBe('no-such-amount');
  });

  test.each([
    ['a decimal slip to a tenth', 94.6, 'stronger-than-known', 'stronger-than-known'],
    ['a decimal slip to ten times', 9463.5, 'too-weak', 'too-weak'],
  ])('%s: %d mL', (_what, perPacketMl, light, held) => {
    const choose = (deliberate: boolean) =>
      reduceMixing(mixingAt('dilution'), { type: 'dilution', perPacketMl, deliberate }, mixingWorld(0))
        .refused;
    expect(choose(false)).toBe(light);
    expect(choose(true)).toBe(held);
  });

  test('not chosen when the temperature is told, is the one the packet is sold for', () => {
    const event = { type: 'water-temperature', celsius: 20 } as const;
    const { plan } = standsAt(reduceMixing(mixingAt('dilution'), event, mixingWorld(0)), 'place');
    expect(plan.namedVolume.value).toBeCloseTo(946.352946, 6);
  });

  test('added to instead of made up to asks for more water and makes a weaker jug', () => {
    const added = reduceMixing(mixingAt('dilution'), { type: 'mode', mode: 'add-to' }, mixingWorld(0));
    const [best] = standsAt(added, 'dilution').scores;
    const [madeUp] = mixingAt('dilution').scores;
    expect((best?.strength.value ?? 0) / (madeUp?.strength.value ?? 1)).toBeCloseTo(946.353 / 987.953, 4);
  });
});
