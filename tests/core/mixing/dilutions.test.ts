import { describe, expect, test } from 'vitest';
import { dilutionsFor, whyNotDiluted } from '../../../core/mixing/dilutions.ts';
import { ONE_PACKET, planMix } from '../../../core/mixing/plan.ts';
import { celsius } from '../../../core/quantity/temperature.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { ADDED_TO_A_QUART, KNOWN_MIXES } from '../../oracles/mixing.ts';
import { QUART_OF_WATER } from '../../oracles/water.ts';
import { makePacket } from '../make/regimen.ts';

const packet = makePacket();
const MADE_UP = 'make-up-to' as const;

function planned(
  volumeMl: number,
  over: Parameters<typeof makePacket>[0] = {},
  mode: 'make-up-to' | 'add-to' = MADE_UP,
) {
  const recipe = { perPacket: millilitres(volumeMl), mode };
  return planMix('levamisole', makePacket(over), recipe, ONE_PACKET, celsius(20));
}

describe('a packet made up to a mark', () => {
  test.each(KNOWN_MIXES)('$activeGrams g to $volumeMl mL comes to $exact mg/mL', (known) => {
    const activeGrams = { ...packet.activeGrams, value: known.activeGrams };
    const grossGrams = { ...packet.grossGrams, value: known.activeGrams * 1.1 };
    const strength = planned(known.volumeMl, { activeGrams, grossGrams }).strength.value;
    expect(Math.abs(strength / known.exact - 1)).toBeLessThan(2e-5);
    if (known.printed !== null) expect(Math.abs(strength / known.printed - 1)).toBeLessThan(known.within);
  });
});

describe('a packet added to a quart of water', () => {
  test.each(ADDED_TO_A_QUART)(
    'of a powder of %d mL/g is %d %% weaker than made up to it',
    (mlPerGram, weaker) => {
      const volumePerGram = { ...packet.volumePerGram, value: mlPerGram };
      const added = planned(946.352946, { volumePerGram }, 'add-to').strength.value;
      const madeUp = planned(946.352946, { volumePerGram }).strength.value;
      expect(100 * (1 - added / madeUp)).toBeCloseTo(weaker, 1);
    },
  );

  test('asks for a whole quart of water by the table, made up for the powder’s room less', () => {
    const atTwenty = QUART_OF_WATER.find(({ celsius: degC }) => degC === 20)?.scaleGrams ?? Number.NaN;
    expect(planned(946.352946, {}, 'add-to').water.value).toBeCloseTo(atTwenty, 2);
    expect(planned(946.352946).water.value).toBeCloseTo((atTwenty * (946.352946 - 41.6)) / 946.352946, 2);
  });
});

describe('the volumes a packet may go into', () => {
  test('are those printed for it, and half, double and four times its own', () => {
    const volumes = dilutionsFor('levamisole', packet).map(({ perPacket, origin }) => [
      Math.round(perPacket.value),
      origin,
    ]);
    expect(volumes).toEqual([
      [473, 'sums'],
      [946, 'printed'],
      [1048, 'printed'],
      [1893, 'printed'],
      [3785, 'sums'],
    ]);
  });

  test('each names its source', () => {
    for (const { source } of dilutionsFor('levamisole', packet)) expect(source.length).toBeGreaterThan(8);
  });

  test('none is stronger than the 181.5 mg/mL that is known to dissolve', () => {
    const strong = makePacket({
      activeGrams: { ...packet.activeGrams, value: 544.5 },
      grossGrams: { ...packet.grossGrams, value: 605 },
      madeUpToMl: { ...packet.madeUpToMl, value: 3000 },
    });
    const least = dilutionsFor('levamisole', strong)[0]?.perPacket.value;
    expect(least).toBe(3000);
  });
});

describe('a volume that was chosen', () => {
  function why(perPacketMl: number) {
    return whyNotDiluted('levamisole', packet, { perPacket: millilitres(perPacketMl), mode: MADE_UP });
  }

  test('of the list, or between half and double, is taken', () => {
    for (const volume of [473.176, 946.353, 1048, 1892.706, 3785.412, 700, 1500])
      expect(why(volume)).toBeNull();
  });

  test('with a decimal slip to a tenth ends in a stop: it would be ten times too strong', () => {
    expect(why(94.6)).toBe('stronger-than-known');
    expect(why(9.46)).toBe('stronger-than-known');
  });

  test('with a decimal slip to ten times ends in a stop: each dose would be a drink', () => {
    expect(why(9463.5)).toBe('too-weak');
  });

  test('in gallons for quarts ends in an ask where the four times is none of the list', () => {
    expect(why(4 * 1048)).toBe('far-from-label');
  });

  test('smaller than the powder itself ends in a stop', () => {
    expect(why(30)).toBe('stronger-than-known');
  });
});
