import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reduceMixing } from '../../../core/jug/reduce.ts';
import type { Mixing, MixingEvent } from '../../../core/jug/state.ts';
import { IDLE_MIXING } from '../../../core/jug/world.ts';
import { QUART_OF_WATER } from '../../oracles/water.ts';
import { movingBench } from '../make/bench.ts';
import { JUG_GRAMS, mixingWorld, PACKET_GRAMS, WATER_GRAMS, WORK } from '../make/mixing.ts';

const AT_20 = QUART_OF_WATER.find(({ celsius }) => celsius === 20)?.scaleGrams ?? Number.NaN;

/** The strength of one packet in this much water at 20 °C, from the outside table alone. */
function oracleStrength(waterGrams: number): number {
  return 46_800 / ((waterGrams * 946.352946) / AT_20 + PACKET_GRAMS * 0.8);
}

/** Something done at the bench: a thing put in the jug, a press, or both. */
interface Act {
  readonly water: number;
  readonly powder: number;
  readonly rest: boolean;
  readonly event: MixingEvent;
}

const act: fc.Arbitrary<Act> = fc.record({
  water: fc.constantFrom(0, 0, 0, 0, 120, 450, WATER_GRAMS),
  powder: fc.constantFrom(0, 0, 0, 0, 26, 52),
  rest: fc.constantFrom(true, true, true, false),
  event: fc.constantFrom<MixingEvent>(
    ...WORK,
    ...WORK,
    { type: 'poured', deliberate: true },
    { type: 'in-service' },
    { type: 'cancel' },
  ),
});

interface Mixed {
  mixing: Mixing;
  water: number;
  powder: number;
  /** What the jug held when the water was taken as poured. */
  waterAtPoured: number;
  /** Whether a held press took the water. */
  deliberate: boolean;
}

/** Plays acts; what went into the jug stays in it until the mixing is cancelled, when it is emptied and washed. */
function mix(acts: readonly Act[], look: (mixed: Mixed) => void): void {
  const mixed: Mixed = { mixing: IDLE_MIXING, water: 0, powder: 0, waterAtPoured: 0, deliberate: false };
  for (const { water, powder, rest, event } of acts) {
    const { step } = mixed.mixing;
    if (step === 'pour') mixed.water += water;
    if (step === 'powder') mixed.powder += powder;
    const onBench = JUG_GRAMS + mixed.water + mixed.powder;
    const world = mixingWorld(onBench, rest ? {} : { bench: movingBench(onBench) });
    const { mixing } = reduceMixing(mixed.mixing, event, world);
    if (step === 'pour' && mixing.step === 'powder') {
      mixed.waterAtPoured = mixed.water;
      mixed.deliberate = event.type === 'poured' && event.deliberate;
    }
    if (mixing.step === 'idle') Object.assign(mixed, { water: 0, powder: 0 });
    mixed.mixing = mixing;
    look(mixed);
  }
}

describe('whatever is done at the bench, in whatever order', () => {
  test('a jug is labelled only with enough water and one whole packet, at the strength really poured', () => {
    let labels = 0;
    fc.assert(
      fc.property(fc.array(act, { minLength: 60, maxLength: 80 }), (acts) => {
        mix(acts, ({ mixing, powder, waterAtPoured, deliberate }) => {
          if (mixing.step !== 'label') return;
          labels += 1;
          expect(waterAtPoured).toBeGreaterThanOrEqual(WATER_GRAMS * 0.98);
          expect(Math.abs(waterAtPoured / WATER_GRAMS - 1) > 0.12 && !deliberate).toBe(false);
          expect(powder).toBe(PACKET_GRAMS);
          expect(Math.abs(mixing.jug.strength.value / oracleStrength(waterAtPoured) - 1)).toBeLessThan(1e-5);
        });
      }),
      { numRuns: 2000 },
    );
    expect(labels).toBeGreaterThan(200);
  });

  test('an overshoot of any size is labelled at the weaker strength it came to', () => {
    fc.assert(
      fc.property(fc.double({ min: WATER_GRAMS, max: 4000, noNaN: true }), (water) => {
        const add = (powder: number): number => JUG_GRAMS + water + powder;
        const onBench = [0, 0, 0, JUG_GRAMS, add(0), add(PACKET_GRAMS), add(PACKET_GRAMS)];
        const done = WORK.reduce<Mixing>((mixing, event, i) => {
          const deliberately = event.type === 'poured' ? { ...event, deliberate: true } : event;
          return reduceMixing(mixing, deliberately, mixingWorld(onBench[i] ?? 0)).mixing;
        }, IDLE_MIXING);
        if (done.step !== 'label') throw new Error(`stopped at ${done.step}`);
        expect(Math.abs(done.jug.strength.value / oracleStrength(water) - 1)).toBeLessThan(1e-5);
        expect(done.jug.volume.value * done.jug.strength.value).toBeCloseTo(46_800, 3);
      }),
    );
  });
});
