import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LANDING_MS, MEMORY_MS } from '../../../core/weighing/blocks.ts';
import { BLANK_DECK, type Deck, feedDeck } from '../../../core/weighing/deck.ts';
import type { Reading } from '../../../core/weighing/reading.ts';
import { animalSignal } from '../make/animal-signal.ts';
import { feedAll } from '../make/deck.ts';
import { makeReading, PLATFORM, readings } from '../make/reading.ts';

const grade = fc.constantFrom('calm', 'restless', 'violent');
const hz = fc.constantFrom(4, 10, 20, 50);
const weight = fc.integer({ min: 3000, max: 120_000 });
const visit = fc.record({ grade, hz, weight, seed: fc.integer({ min: 1, max: 1e6 }) });

function readingsOf(one: {
  grade: 'calm' | 'restless' | 'violent';
  hz: number;
  weight: number;
  seed: number;
}): Reading[] {
  const load = animalSignal(one.weight, one.grade, one.seed);
  return [...readings(0, 1000, one.hz, () => 0), ...readings(1000, 9000, one.hz, load)];
}

function firstHoldAt(all: readonly Reading[], need: number): number {
  let deck = BLANK_DECK;
  for (const reading of all) {
    deck = feedDeck(deck, reading, PLATFORM, need);
    if (deck.held !== null) return deck.held.at;
  }
  return Number.POSITIVE_INFINITY;
}

describe('whatever the animal does', { timeout: 60_000 }, () => {
  test('a tighter need never holds earlier', () => {
    fc.assert(
      fc.property(visit, fc.double({ min: 0.002, max: 0.02, noNaN: true }), (one, need) => {
        const all = readingsOf(one);
        expect(firstHoldAt(all, need)).toBeLessThanOrEqual(firstHoldAt(all, need / 1.5));
      }),
      { numRuns: 15 },
    );
  });

  test('when the machine was started makes no difference', () => {
    fc.assert(
      fc.property(visit, fc.integer({ min: 0, max: 1e8 }), (one, later) => {
        const all = readingsOf(one);
        const shifted = feedAll(all.map((reading) => ({ ...reading, at: reading.at + later })));
        const before = feedAll(all);
        expect(shifted.holds.map(({ at }) => at - later)).toEqual(before.holds.map(({ at }) => at));
        for (const [i, { mass }] of shifted.holds.entries())
          expect(mass.value).toBeCloseTo(before.holds[i]?.mass.value ?? Number.NaN, 0);
      }),
      { numRuns: 15 },
    );
  });

  test('a deck fed in two parts, the first kept aside and fed on again, is the same: nothing is changed in place', () => {
    fc.assert(
      fc.property(visit, fc.double({ min: 0, max: 1, noNaN: true }), (one, where) => {
        const all = readingsOf(one);
        const cut = Math.floor(where * all.length);
        const half = feedAll(all.slice(0, cut)).deck;
        const frozen = structuredClone(half);
        const whole = feedAll(all.slice(cut), half).deck;
        expect(half).toEqual(frozen);
        expect(whole).toEqual(feedAll(all).deck);
      }),
      { numRuns: 15 },
    );
  });

  test('nothing is held without a zero before it', () => {
    fc.assert(
      fc.property(visit, fc.integer({ min: 60, max: 450 }), (one, residue) => {
        const before = readings(0, 4000, one.hz, () => Math.max(100, residue));
        const on = readings(4000, 8000, one.hz, animalSignal(one.weight, one.grade, one.seed));
        expect(feedAll([...before, ...on]).holds).toEqual([]);
      }),
      { numRuns: 15 },
    );
  });

  test('a load that keeps changing by 3 % of itself a second or more is never held', () => {
    fc.assert(
      fc.property(
        hz,
        weight,
        fc.double({ min: 0.03, max: 0.6, noNaN: true }),
        fc.boolean(),
        (rate, from, slope, up) => {
          const load = (ms: number) => from * (up ? 1 + slope : 1 - slope / 2) ** (ms / 1000);
          const ramp = readings(1000, 4000, rate, load);
          expect(feedAll([...readings(0, 1000, rate, () => 0), ...ramp]).holds).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('an uncertainty is never less than what the division alone leaves', () => {
    fc.assert(
      fc.property(visit, (one) => {
        for (const { uncertainty } of feedAll(readingsOf(one)).holds)
          expect(uncertainty.value).toBeGreaterThanOrEqual(50 / Math.sqrt(3) - 1e-9);
      }),
      { numRuns: 15 },
    );
  });
});

test('an hour of an animal that never leaves keeps no more than the landing and the last seconds', {
  timeout: 60_000,
}, () => {
  let deck: Deck = feedAll(readings(0, 1000, 10, () => 0)).deck;
  const load = animalSignal(40_000, 'restless', 5);
  for (let at = 1000; at < 3_600_000; at += 100) {
    deck = feedDeck(deck, makeReading(at, Math.round(load(at % 25_000) / 50) * 50), PLATFORM);
    if (deck.blocks.length > (LANDING_MS + MEMORY_MS) / 100 + 1)
      throw new Error(`${deck.blocks.length} blocks kept at ${at} ms`);
  }
  expect(deck.held).not.toBeNull();
});
