import { describe, expect, it } from 'vitest';
import { kilograms } from '../../../core/quantity/mass.ts';
import { createVisit } from '../../../hardware/simulator/animal.ts';
import type { AnimalGrade } from '../../../hardware/simulator/gait.ts';

const MASS = kilograms(40);
const SEEDS = Array.from({ length: 40 }, (_, seed) => seed);

/** Loads at 10 Hz over 20 s, from 2 s after the first foot: the length an activity score is taken over. */
function standing(seed: number, grade: AnimalGrade): number[] {
  const visit = createVisit({ mass: MASS, grade, seed });
  return Array.from({ length: 200 }, (_, index) => visit.loadAt(2000 + 100 * index, null).value);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The coefficient of variation: the standard deviation as a share of the mean. */
function variation(values: readonly number[]): number {
  const centre = mean(values);
  return Math.sqrt(mean(values.map((value) => (value - centre) ** 2))) / centre;
}

describe('a simulated animal', () => {
  it.each([
    ['calm', 0, 0.01],
    ['restless', 0.01, 0.05],
    ['violent', 0.05, 0.25],
  ] as const)('that is %s varies by its grade: from %d to %d of its weight', (grade, low, high) => {
    for (const seed of SEEDS) {
      const share = variation(standing(seed, grade));
      expect(share, `seed ${seed}`).toBeGreaterThan(low);
      expect(share, `seed ${seed}`).toBeLessThan(high);
    }
  });

  it('weighs on average what it weighs, unless a foot stands beside the deck', () => {
    const calm = mean(SEEDS.flatMap((seed) => standing(seed, 'calm')));
    const restless = mean(SEEDS.flatMap((seed) => standing(seed, 'restless')));
    const violent = mean(SEEDS.flatMap((seed) => standing(seed, 'violent')));
    expect(Math.abs(calm / MASS.value - 1)).toBeLessThan(0.001);
    expect(Math.abs(restless / MASS.value - 1)).toBeLessThan(0.003);
    expect(violent / MASS.value).toBeLessThan(1);
    expect(violent / MASS.value).toBeGreaterThan(0.9);
  });

  it('steps on leg by leg within a second and a half, and off again', () => {
    for (const seed of SEEDS) {
      const visit = createVisit({ mass: MASS, grade: 'calm', seed });
      expect(visit.loadAt(0, null).value).toBe(0);
      const half = visit.loadAt(400, null).value / MASS.value;
      expect(half).toBeGreaterThan(0.2);
      expect(half).toBeLessThan(0.82);
      expect(visit.loadAt(1700, null).value / MASS.value).toBeGreaterThan(0.95);
      expect(visit.loadAt(9000, visit.leaveMs).value).toBeLessThan(1e-9);
      expect(visit.loadAt(9000, 10).value / MASS.value).toBeGreaterThan(0.9);
    }
  });

  it('moves the same way for the same seed at any moment asked for, in any order', () => {
    const visit = createVisit({ mass: MASS, grade: 'violent', seed: 5 });
    const forwards = [3000, 4000, 5000].map((at) => visit.loadAt(at, null).value);
    const again = createVisit({ mass: MASS, grade: 'violent', seed: 5 });
    const backwards = [5000, 4000, 3000].map((at) => again.loadAt(at, null).value);
    expect(forwards).toEqual(backwards.reverse());
    expect(createVisit({ mass: MASS, grade: 'violent', seed: 6 }).loadAt(3000, null).value).not.toBe(
      forwards[0],
    );
  });

  it('never weighs less than nothing', () => {
    for (const seed of SEEDS) expect(Math.min(...standing(seed, 'violent'))).toBeGreaterThan(0);
  });
});
