import { describe, expect, test } from 'vitest';
import { SYRINGE_CATALOGUE } from '../../../core/dosing/syringe.ts';
import { reduceMixing } from '../../../core/jug/reduce.ts';
import type { Mixing } from '../../../core/jug/state.ts';
import { makeAnimal } from '../make/animal.ts';
import { makeApproval } from '../make/approval.ts';
import { mixingAt, mixingWorld, QUART_ML, standsAt } from '../make/mixing.ts';

const world = mixingWorld(0, {
  animals: [makeAnimal()],
  syringes: SYRINGE_CATALOGUE,
  approvals: [makeApproval()],
});
const look = (perPacketMl: number, mixing: Mixing = mixingAt('dilution')) =>
  reduceMixing(mixing, { type: 'look', perPacketMl }, world);
const ownOf = (perPacketMl: number) => {
  const { own } = standsAt(look(perPacketMl), 'dilution');
  if (own === null) throw new Error('nothing was worked out');
  return own;
};

describe('a volume of the keeper’s own', () => {
  test('is worked out for the herd and its syringes beside the listed ones', () => {
    const { score, far } = ownOf(1500);
    // 46.8 g in 1,500 mL.
    expect(score.strength.value).toBeCloseTo(31.2, 6);
    expect(score).toMatchObject({ animals: 1, measurable: 1, dilution: { origin: 'entered' } });
    expect(far).toBe(false);
  });

  test('leaves the list as it was, and goes when powder or mode are chosen anew', () => {
    const before = standsAt({ mixing: mixingAt('dilution'), effects: [], refused: null }, 'dilution');
    const after = standsAt(look(1500), 'dilution');
    expect(after.scores).toEqual(before.scores);
    const other = reduceMixing(after, { type: 'mode', mode: 'add-to' }, world);
    expect(standsAt(other, 'dilution').own).toBeNull();
  });

  test.each([
    ['a decimal slip, 94.6 mL for a quart', 94.6, 'stronger-than-known'],
    ['less water than the powder itself', 30, 'stronger-than-known'],
    ['a decimal slip the other way, 9,464 mL', 9464, 'too-weak'],
  ])('%s is refused', (_, ml, why) => {
    expect(look(ml).refused).toBe(why);
    for (const deliberate of [false, true])
      expect(
        reduceMixing(mixingAt('dilution'), { type: 'dilution', perPacketMl: ml, deliberate }, world).refused,
      ).toBe(why);
  });

  test('far from the packet’s own is taken by a held press only', () => {
    const ml = 3 * QUART_ML;
    expect(ownOf(ml).far).toBe(true);
    const take = (deliberate: boolean) =>
      reduceMixing(mixingAt('dilution'), { type: 'dilution', perPacketMl: ml, deliberate }, world);
    expect(take(false).refused).toBe('far-from-label');
    expect(take(true).mixing).toMatchObject({ step: 'water', perPacketMl: ml });
  });

  test('a gallon for a quart is one of the listed volumes, and its doses are four times as large', () => {
    expect(ownOf(4 * QUART_ML).far).toBe(false);
    const quart = ownOf(QUART_ML).score;
    expect(ownOf(4 * QUART_ML).score.needed.value).toBeCloseTo(4 * quart.needed.value, 6);
  });
});
