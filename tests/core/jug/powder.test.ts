import { describe, expect, test } from 'vitest';
import { reduceMixing } from '../../../core/jug/reduce.ts';
import type { Mixing } from '../../../core/jug/state.ts';
import { makeBench, movingBench } from '../make/bench.ts';
import { JUG_GRAMS, mixingAt, mixingWorld, PACKET_GRAMS, standsAt, WATER_GRAMS } from '../make/mixing.ts';

const WITH_WATER = JUG_GRAMS + WATER_GRAMS;

/** Lets the scale come to rest with this much powder in the jug. */
function rest(mixing: Mixing, powder: number): Mixing {
  return reduceMixing(mixing, { type: 'weighed' }, mixingWorld(WITH_WATER + powder)).mixing;
}

describe('the powder', () => {
  test.each([
    [0, 'none'],
    [26, 'part'],
    [104, 'too-much'],
  ])('of %d g is judged "%s" and the work does not go on', (powder, verdict) => {
    expect(rest(mixingAt('powder'), powder)).toMatchObject({ step: 'powder', verdict });
  });

  test('of a whole packet moves the work on', () => {
    expect(rest(mixingAt('powder'), PACKET_GRAMS).step).toBe('dissolve');
  });

  test('arriving in two halves is seen as a part, then as the whole', () => {
    expect(rest(rest(mixingAt('powder'), 26), 52).step).toBe('dissolve');
  });

  test('is not judged while the scale moves', () => {
    const before = mixingAt('powder');
    const world = mixingWorld(0, { bench: movingBench(WITH_WATER + PACKET_GRAMS) });
    expect(reduceMixing(before, { type: 'weighed' }, world).mixing).toBe(before);
  });

  test('is not judged on a scale tared since the water', () => {
    const world = mixingWorld(0, { bench: makeBench(WITH_WATER + PACKET_GRAMS, { net: true }) });
    expect(reduceMixing(mixingAt('powder'), { type: 'weighed' }, world).mixing.step).toBe('powder');
  });

  test('is not judged while the bench’s link is not ready', () => {
    const world = mixingWorld(WITH_WATER + PACKET_GRAMS, { benchReady: false });
    expect(reduceMixing(mixingAt('powder'), { type: 'weighed' }, world).mixing.step).toBe('powder');
  });

  test('is not judged against an empty bench when the jug has been lifted', () => {
    expect(rest(mixingAt('powder'), -WITH_WATER)).toMatchObject({ step: 'powder', verdict: 'jug-lifted' });
  });

  test('of a second packet, tipped in after the first was seen, is caught before the label', () => {
    const dissolving = rest(mixingAt('powder'), PACKET_GRAMS);
    const twoIn = rest(dissolving, 2 * PACKET_GRAMS);
    const done = reduceMixing(twoIn, { type: 'dissolved' }, mixingWorld(WITH_WATER + 2 * PACKET_GRAMS));
    expect(done.mixing.step).not.toBe('label');
  });

  test.each([78, 104])('of %d g does not become one packet when something is taken out again', (rise) => {
    const tooMuch = rest(mixingAt('powder'), rise);
    expect(rest(tooMuch, PACKET_GRAMS).step).toBe('powder');
  });

  test('stays judged when the jug is lifted to swirl it', () => {
    expect(rest(rest(mixingAt('powder'), PACKET_GRAMS), -WITH_WATER).step).toBe('dissolve');
  });
});

describe('the label', () => {
  test('carries what the jug came to, who mixed it, when, and its use-by twelve hours on', () => {
    const { jug } = standsAt(
      reduceMixing(mixingAt('dissolve'), { type: 'dissolved' }, mixingWorld(0)),
      'label',
    );
    expect(jug).toMatchObject({
      id: 'jug-new',
      number: 8,
      by: 'Kim',
      clockTrusted: true,
      discardedAtMs: null,
    });
    expect(jug.strength.value).toBeCloseTo(49.453, 2);
    expect(jug.useByMs - jug.mixedAtMs).toBe(12 * 3_600_000);
    expect(jug.drawn.value).toBe(0);
  });

  test('says when the clock was not trusted', () => {
    const world = mixingWorld(0, { clockTrusted: false });
    const { jug } = standsAt(reduceMixing(mixingAt('dissolve'), { type: 'dissolved' }, world), 'label');
    expect(jug.clockTrusted).toBe(false);
  });
});
