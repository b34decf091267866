import { describe, expect, test } from 'vitest';
import type { Held } from '../../../core/weighing/settle.ts';
import { animalSignal, type Grade, seeded } from '../make/animal-signal.ts';
import { stepOnWith } from '../make/deck.ts';

const RATES = [4, 10, 20, 50] as const;
/** Fewer animals at the fast rates: they take as many readings. */
function seedsAt(hz: number): number[] {
  return Array.from({ length: hz > 10 ? 24 : 60 }, (_, i) => i + 1);
}

interface Trial {
  readonly truth: number;
  readonly holds: readonly Held[];
}

function trials(grade: Grade, hz: number): Trial[] {
  return seedsAt(hz).map((seed) => {
    const truth = 4000 + 116_000 * seeded(seed * 7919)() ** 2;
    return { truth, holds: stepOnWith(animalSignal(truth, grade, seed), 15_000, hz).holds };
  });
}

/** How far a hold lies from the truth, beyond what the scale's own step can be blamed for, as a share. */
function error({ truth }: Trial, held: Held): number {
  return Math.max(0, Math.abs(held.mass.value - truth) - 50) / truth;
}

describe.each(RATES)('at %d readings a second', { timeout: 60_000 }, (hz) => {
  test('a calm animal that is there at once is always held, within 3.5 s (5 s at 4 Hz), and within 1 %', () => {
    for (const trial of trials('calm', hz)) {
      const [first] = trial.holds;
      if (first === undefined) throw new Error(`an animal of ${trial.truth} g was never held`);
      expect(first.at - 1000).toBeLessThan(hz === 4 ? 5000 : 3500);
      for (const held of trial.holds) expect(error(trial, held)).toBeLessThan(0.01);
    }
  });

  test('a restless animal is held within 15 s nearly always, and off by 3 % never, by 2 % seldom', () => {
    const all = trials('restless', hz);
    const held = all.filter(({ holds }) => holds.length > 0);
    expect(held.length).toBeGreaterThanOrEqual(0.9 * all.length);
    const errors = held.flatMap((trial) => trial.holds.map((one) => error(trial, one)));
    expect(Math.max(...errors)).toBeLessThan(0.03);
    expect(errors.filter((one) => one > 0.02).length).toBeLessThanOrEqual(0.05 * errors.length);
  });

  test('a violent animal may be refused, and when held is off by 5 % never', () => {
    const errors = trials('violent', hz).flatMap((trial) => trial.holds.map((held) => error(trial, held)));
    for (const one of errors) expect(one).toBeLessThan(0.05);
  });

  test.each([0.05, 0.1, 0.25, 0.5])('a load that changes by %d of itself a second is never held', (slope) => {
    const climbing = (ms: number): number => 20_000 * (1 + slope) ** (ms / 1000);
    const falling = (ms: number): number => 150_000 * (1 - slope) ** (ms / 1000);
    expect(stepOnWith(climbing, 5000, hz).holds).toEqual([]);
    expect(stepOnWith(falling, 5000, hz).holds).toEqual([]);
  });

  test('the doubt of a hold is never less than the scale’s own', () => {
    for (const { holds } of trials('calm', hz)) {
      for (const held of holds)
        expect(held.uncertainty.value).toBeGreaterThanOrEqual(50 / Math.sqrt(3) - 1e-9);
    }
  });

  test('front feet first, then the whole animal: the second hold replaces the first and says so', () => {
    const whole = animalSignal(40_000, 'calm', 3);
    const load = (ms: number): number => (ms < 4000 ? 0.6 : 1) * whole(ms);
    const { holds } = stepOnWith(load, 12_000, hz);
    const last = holds.at(-1);
    expect(holds.length).toBeGreaterThanOrEqual(2);
    expect(Math.abs((last?.mass.value ?? 0) / 40_000 - 1)).toBeLessThan(0.01);
    expect(Math.abs((last?.changedFrom?.value ?? 0) / 24_000 - 1)).toBeLessThan(0.2);
  });

  test('a second animal joining the first re-holds and says what it replaced', () => {
    const load = (ms: number): number => (ms < 5000 ? 40_000 : 65_000);
    const last = stepOnWith(load, 14_000, hz).holds.at(-1);
    expect(last?.mass.value).toBe(65_000);
    expect(last?.changedFrom).not.toBeNull();
  });

  test('an animal that goes on standing keeps its first hold', () => {
    expect(stepOnWith(animalSignal(40_000, 'calm', 5), 15_000, hz).holds).toHaveLength(1);
  });
});
