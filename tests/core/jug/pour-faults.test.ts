import { describe, expect, test } from 'vitest';
import { reduceMixing } from '../../../core/jug/reduce.ts';
import type { Mixing, MixingAt, MixingEvent } from '../../../core/jug/state.ts';
import type { MixingWorld } from '../../../core/jug/world.ts';
import { makeBench, movingBench } from '../make/bench.ts';
import {
  JUG_GRAMS,
  mixingAt,
  mixingWorld,
  PACKET_GRAMS,
  POURED,
  pourOf,
  standsAt,
  WATER_GRAMS,
} from '../make/mixing.ts';
import { UP } from '../make/time.ts';

const GALLON_G = 3733;

/** Takes the water in a jug as poured. */
function pour(mixing: Mixing, water: number, deliberate = false) {
  return reduceMixing(mixing, { type: 'poured', deliberate }, mixingWorld(JUG_GRAMS + water));
}

/** Shows the mixing a row of loads at rest, a second apart. */
function shows(mixing: Mixing, loads: readonly number[]): Mixing {
  return loads.reduce((before, load, i) => {
    const now = { uptimeMs: UP + 1000 * i, wallMs: 0 };
    return reduceMixing(before, { type: 'weighed' }, mixingWorld(load, { now })).mixing;
  }, mixing);
}

/** Pours on to the pan at 100 g a second, seen ten times a second. */
function runs(mixing: Mixing, from: number, to: number): Mixing {
  let after = mixing;
  for (let load = from, i = 0; load <= to; load += 10, i += 1) {
    const world = mixingWorld(load, {
      bench: movingBench(load),
      now: { uptimeMs: UP + 60_000 + 100 * i, wallMs: 0 },
    });
    after = reduceMixing(after, { type: 'weighed' }, world).mixing;
  }
  return after;
}

describe('too much water', () => {
  test('by a little is no fault: the strength follows, and nothing is thrown away', () => {
    const { achieved } = standsAt(pour(mixingAt('pour'), 960), 'powder');
    // 960 g shown are 962.74 mL at 20 °C, and 41.6 mL of powder come on top.
    expect(achieved.strength.value).toBeCloseTo(46_800 / (960 * 1.002852 + 41.6), 2);
  });

  test('a gallon for a quart ends in an ask: it would be four times too weak', () => {
    expect(pour(mixingAt('pour'), GALLON_G).refused).toBe('far-too-much-water');
  });

  test('a gallon for a quart, taken by a held press, is labelled at a quarter of the strength', () => {
    const { achieved } = standsAt(pour(mixingAt('pour'), GALLON_G, true), 'powder');
    expect(achieved.strength.value).toBeCloseTo(12.36, 1);
  });

  test('double the water ends in an ask', () => {
    expect(pour(mixingAt('pour'), 2 * WATER_GRAMS).refused).toBe('far-too-much-water');
  });
});

describe('too little water', () => {
  test.each([0, 90.2, 451, 880])('%d g of 902 ends in a stop, held press or not', (water) => {
    expect(pour(mixingAt('pour'), water).refused).toBe('too-little-water');
    expect(pour(mixingAt('pour'), water, true).refused).toBe('too-little-water');
  });

  test('a quart for a gallon ends in a stop', () => {
    const gallon = pourOf({ perPacketMl: 3785.412 });
    expect(pour(gallon, WATER_GRAMS, true).refused).toBe('too-little-water');
  });
});

describe('the jug or the scale, touched during the pour', () => {
  test('a jug lifted is waited for, and cannot be taken as poured', () => {
    const lifted = shows(mixingAt('pour'), [JUG_GRAMS + 500, 0]);
    expect(standsAt({ mixing: lifted, effects: [], refused: null }, 'pour').watch.place).toBe('off');
    const after = reduceMixing(lifted, POURED, mixingWorld(0));
    expect(after.refused).toBe('jug-not-back');
  });

  test('a jug lifted, filled at the tap and put back is weighed by its known empty mass', () => {
    const back = shows(mixingAt('pour'), [JUG_GRAMS, 0, 0, JUG_GRAMS + WATER_GRAMS]);
    expect(pour(back, WATER_GRAMS).refused).toBeNull();
  });

  test('a scale zeroed half way and poured on to the mark is refused: 500 g more are in', () => {
    const zeroed = shows(mixingAt('pour'), [JUG_GRAMS, JUG_GRAMS + 500, 0]);
    const on = shows(runs(zeroed, 0, JUG_GRAMS + WATER_GRAMS), [JUG_GRAMS + WATER_GRAMS]);
    expect(pour(on, WATER_GRAMS, true).refused).toBe('jug-not-back');
  });

  test('a scale tared half way, that says so, is refused', () => {
    const world = mixingWorld(0, { bench: makeBench(WATER_GRAMS, { net: true }) });
    expect(reduceMixing(mixingAt('pour'), POURED, world).refused).toBe('scale-tared');
  });

  test('a scale that was moved and then zeroed empty goes on where it was', () => {
    const zeroed = shows(mixingAt('pour'), [JUG_GRAMS + 500, 0, -800, 0, JUG_GRAMS + WATER_GRAMS]);
    const { water } = standsAt(pour(zeroed, WATER_GRAMS), 'powder');
    expect(water.mass.value).toBeCloseTo(WATER_GRAMS, 6);
  });

  test('a link silent in the middle of the pour blanks it, and the same jug goes on', () => {
    const gone = mixingWorld(0, { benchReady: false });
    const silent = reduceMixing(shows(mixingAt('pour'), [JUG_GRAMS + 500]), { type: 'weighed' }, gone).mixing;
    expect(standsAt({ mixing: silent, effects: [], refused: null }, 'pour').watch.place).toBe('off');
    expect(reduceMixing(silent, POURED, gone).refused).toBe('bench-not-ready');
    const back = shows(silent, [JUG_GRAMS + 500, JUG_GRAMS + WATER_GRAMS]);
    expect(pour(back, WATER_GRAMS).refused).toBeNull();
  });

  test('a link that was silent comes back to another load: not taken until the bare pan was seen', () => {
    const gone = mixingWorld(0, { benchReady: false });
    const silent = reduceMixing(shows(mixingAt('pour'), [JUG_GRAMS + 500]), { type: 'weighed' }, gone).mixing;
    expect(pour(shows(silent, [JUG_GRAMS + WATER_GRAMS]), WATER_GRAMS, true).refused).toBe('jug-not-back');
  });
});

describe('the wrong powder', () => {
  function powder(rise: number): Mixing {
    return shows(mixingAt('powder'), [JUG_GRAMS + WATER_GRAMS + rise]);
  }

  test.each([
    ['a packet forgotten', 0, 'none'],
    ['half a packet', PACKET_GRAMS / 2, 'part'],
    ['a packet of 13 g for one of 52 g', 13, 'part'],
    ['a decimal slip to 5.2 g', 5.2, 'part'],
    ['two packets', 2 * PACKET_GRAMS, 'too-much'],
    ['a decimal slip to 520 g', 520, 'too-much'],
    ['a packet of 605 g for one of 52 g', 605, 'too-much'],
  ])('%s makes no jug', (_what, rise, verdict) => {
    const mixing = powder(rise);
    expect(mixing).toMatchObject({ step: 'powder', verdict });
    const done = reduceMixing(mixing, { type: 'dissolved' }, mixingWorld(JUG_GRAMS + WATER_GRAMS + rise));
    expect(done.refused).toBe('wrong-state');
  });
});

describe('a full jug at the beginning', () => {
  const full = JUG_GRAMS + 946;

  function place(onBench: number, over: Partial<MixingWorld> = {}) {
    return reduceMixing(mixingAt('place'), { type: 'jug-placed' }, mixingWorld(onBench, over));
  }

  test('is not taken for an empty one', () => {
    expect(standsAt(place(full), 'new-jug').doubt).toMatchObject({ kind: 'heavier', by: { value: 946 } });
  });

  test('is not taken on a farm that knows no jug yet, but by the word of who looked in', () => {
    const unknown = { vessels: [] };
    const asked = standsAt(place(full, unknown), 'new-jug');
    expect(asked.doubt).toEqual({ kind: 'first' });
    const light: MixingEvent = { type: 'jug-is-empty', vesselId: null, deliberate: false };
    expect(reduceMixing(asked, light, mixingWorld(full, unknown)).refused).toBe('needs-held-word');
  });

  test('goes on once it was emptied and stands there again', () => {
    const emptied = reduceMixing(place(full).mixing, { type: 'jug-placed' }, mixingWorld(JUG_GRAMS));
    expect(standsAt(emptied, 'pour').vessel.letter).toBe('A');
  });

  test('swapped for another while it is asked about is looked at anew', () => {
    const word: MixingEvent = { type: 'jug-is-empty', vesselId: null, deliberate: true };
    const swapped = reduceMixing(place(full).mixing, word, mixingWorld(200));
    expect(standsAt(swapped, 'new-jug').doubt).toMatchObject({ kind: 'lighter' });
    expect(swapped.effects).toEqual([]);
  });

  test('learned by a word, is kept under its letter; weighed anew, it keeps the letter it has', () => {
    const asked: MixingAt<'new-jug'> = standsAt(place(350), 'new-jug');
    const learn = (vesselId: string | null) =>
      reduceMixing(asked, { type: 'jug-is-empty', vesselId, deliberate: true }, mixingWorld(350)).effects;
    expect(learn(null)).toMatchObject([
      { do: 'learn-vessel', vessel: { letter: 'B', empty: { value: 350 } } },
    ]);
    expect(learn('vessel-a')).toMatchObject([{ vessel: { letter: 'A', empty: { value: 350 } } }]);
  });
});
