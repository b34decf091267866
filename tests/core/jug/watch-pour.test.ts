import { describe, expect, test } from 'vitest';
import { POUR_BEGINS, type PourWatch, watchPour } from '../../../core/jug/watch-pour.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { BLANK_BENCH } from '../../../core/weighing/bench.ts';
import { makeBench, movingBench } from '../make/bench.ts';

const JUG = grams(300);

/** What the scale shows, ten times a second: a number at rest, `~` before one that moves. */
type Shown = number | `~${number}` | 'gone' | 'net';

function look(watch: PourWatch, shown: Shown, at: number): PourWatch {
  const bench = (() => {
    if (shown === 'gone') return BLANK_BENCH;
    if (shown === 'net') return makeBench(0, { net: true });
    return typeof shown === 'number' ? makeBench(shown) : movingBench(Number(shown.slice(1)));
  })();
  return watchPour(watch, bench, JUG, at);
}

function watch(shown: readonly Shown[], stepMs = 100): PourWatch {
  return shown.reduce<PourWatch>((before, each, i) => look(before, each, i * stepMs), POUR_BEGINS);
}

/** A stream onto the pan: moving values from one to another. */
function stream(from: number, to: number, gramsPerLook: number): Shown[] {
  const count = Math.floor((to - from) / gramsPerLook);
  return Array.from({ length: count }, (_, i): Shown => `~${from + i * gramsPerLook}`);
}

describe('a jug that stands', () => {
  test('stands while water runs in and comes to rest', () => {
    expect(watch([300, ...stream(300, 1200, 30), 1200])).toMatchObject({ place: 'on', water: grams(900) });
  });

  test('is not lost to the push of the stream, which ends with it', () => {
    expect(watch([300, ...stream(300, 820, 8), '~816', 804]).place).toBe('on');
  });
});

describe('a jug lifted during the pour', () => {
  test('is off until it stands there as it was', () => {
    expect(watch([800, '~0', 0]).place).toBe('off');
    expect(watch([800, '~0', 0, '~400', 801])).toMatchObject({ place: 'on', water: grams(501) });
  });

  test('and filled at the tap is weighed anew once it is back', () => {
    expect(watch([300, '~0', 0, 0, '~700', 1202])).toMatchObject({ place: 'on', water: grams(902) });
  });

  test('and set back lighter, after some was poured out, is weighed anew too', () => {
    expect(watch([1400, '~0', 0, '~600', 1200])).toMatchObject({ place: 'on', water: grams(900) });
  });

  test('that comes back heavier without the bare pan having been seen does not count', () => {
    expect(watch([800, '~100', '~900', 950]).place).toBe('moved');
  });
});

describe('a scale zeroed or tared under the jug', () => {
  test('in the middle of the pour, and poured on to, is found out before the mark', () => {
    const zeroed = watch([300, ...stream(300, 800, 20), '~0', 0, ...stream(0, 320, 20)]);
    expect(zeroed.place).toBe('moved');
    // Poured on to what would look like the mark: it still does not count.
    const on = [...stream(320, 1200, 20), 1202].reduce(
      (before, each, i) => look(before, each as Shown, 1e5 + 100 * i),
      zeroed,
    );
    expect(on.place).toBe('moved');
  });

  test('and lifted off shows less than nothing, which is no bare pan', () => {
    expect(watch([800, '~0', 0, '~-400', -800]).place).toBe('moved');
  });

  test('counts again once the bare scale shows 0 and the jug is put back', () => {
    const shown: Shown[] = [800, 0, '~-400', -800, '~-400', 0, '~500', 800];
    expect(watch(shown)).toMatchObject({ place: 'on', water: grams(500) });
  });

  test('and saying so is off until it weighs gross again', () => {
    expect(watch([800, 'net', 'net']).place).toBe('off');
    expect(watch([800, 'net', 'net', 800]).place).toBe('on');
  });
});

describe('a link that falls silent during the pour', () => {
  test('comes back to the same jug', () => {
    expect(watch([800, 'gone', '~800', 800])).toMatchObject({ place: 'on', water: grams(500) });
  });

  test('and to a scale that was switched off under the jug, and so zeroed, does not count', () => {
    const shown: Shown[] = [800, 'gone', 0, ...stream(0, 500, 20), 500];
    expect(watch(shown).place).toBe('moved');
  });

  test('and to more water than before does not count until the bare pan was seen', () => {
    expect(watch([800, 'gone', 1202]).place).toBe('moved');
    expect(watch([800, 'gone', 1202, '~0', 0, '~600', 1202])).toMatchObject({
      place: 'on',
      water: grams(902),
    });
  });
});

test('a cup or a hand on the pan instead of the jug does not count', () => {
  expect(watch([300, 0, 150]).place).toBe('moved');
});
