import { describe, expect, test } from 'vitest';
import { reduceMixing } from '../../../core/jug/reduce.ts';
import type { MixingEvent, MixingStep } from '../../../core/jug/state.ts';
import { IDLE_MIXING, type MixingWorld } from '../../../core/jug/world.ts';
import { BLANK_BENCH } from '../../../core/weighing/bench.ts';
import { makeBench, movingBench } from '../make/bench.ts';
import { JUG_GRAMS, mixingAt, mixingWorld, POURED, standsAt, WATER_GRAMS } from '../make/mixing.ts';

function refusal(step: MixingStep, event: MixingEvent, world: MixingWorld) {
  const before = mixingAt(step);
  const { mixing, effects, refused } = reduceMixing(before, event, world);
  expect(mixing).toBe(before);
  expect(effects).toEqual([]);
  return refused;
}

describe('the mixing refuses', () => {
  test('a packet it does not know', () => {
    const step = reduceMixing(IDLE_MIXING, { type: 'start', packetId: 'no-such' }, mixingWorld(0));
    expect(step.refused).toBe('no-such-packet');
  });

  test.each([0.9, 40.1, -5, Number.NaN, Number.POSITIVE_INFINITY])('water of %d °C', (celsius) => {
    expect(refusal('water', { type: 'water-temperature', celsius }, mixingWorld(0))).toBe(
      'temperature-out-of-range',
    );
  });

  test.each([1, 20, 40])('no water of %d °C', (celsius) => {
    const step = reduceMixing(mixingAt('water'), { type: 'water-temperature', celsius }, mixingWorld(0));
    expect(standsAt(step, 'place').plan.temperature.value).toBe(celsius);
  });

  test.each([
    ['place', { type: 'jug-placed' }],
    ['pour', POURED],
  ] as const)('at %s, a bench that is lost, silent or still moving', (step, event) => {
    const onBench = JUG_GRAMS + WATER_GRAMS;
    expect(refusal(step, event, mixingWorld(onBench, { benchReady: false }))).toBe('bench-not-ready');
    expect(refusal(step, event, mixingWorld(0, { bench: BLANK_BENCH }))).toBe('bench-not-ready');
    expect(refusal(step, event, mixingWorld(0, { bench: movingBench(onBench) }))).toBe('bench-moving');
  });

  test('an empty bench as a jug', () => {
    expect(refusal('place', { type: 'jug-placed' }, mixingWorld(19))).toBe('no-jug-on-scale');
  });

  test.each([
    ['place', { type: 'jug-placed' }],
    ['pour', POURED],
  ] as const)('at %s, a tared scale, since it hides what stands there', (step, event) => {
    const tared = mixingWorld(0, { bench: makeBench(WATER_GRAMS, { net: true }) });
    expect(refusal(step, event, tared)).toBe('scale-tared');
  });

  test('less water than the band allows', () => {
    const { band, plan } = mixingAt('pour');
    const least = JUG_GRAMS + plan.water.value - band.value;
    expect(refusal('pour', POURED, mixingWorld(least - 0.1))).toBe('too-little-water');
    const enough = reduceMixing(mixingAt('pour'), POURED, mixingWorld(least + 0.1));
    expect(enough.mixing.step).toBe('powder');
  });

  test('a bench too coarse to see whether a whole packet arrived', () => {
    const coarse = (grams: number) =>
      mixingWorld(0, { bench: makeBench(JUG_GRAMS, { division: { unit: 'g', value: grams } }) });
    expect(refusal('place', { type: 'jug-placed' }, coarse(5))).toBe('scale-too-coarse');
    expect(refusal('place', { type: 'jug-placed' }, coarse(50))).toBe('scale-too-coarse');
    expect(reduceMixing(mixingAt('place'), { type: 'jug-placed' }, coarse(2)).refused).toBeNull();
  });
});
