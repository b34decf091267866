import { describe, expect, it } from 'vitest';
import { between, seededRandom } from '../../../hardware/simulator/random.ts';

describe('the seeded random numbers', () => {
  it('are the same for the same seed and others for another', () => {
    const row = (seed: number) => Array.from({ length: 5 }, seededRandom(seed));
    expect(row(1)).toEqual(row(1));
    expect(row(1)).not.toEqual(row(2));
  });

  it('lie from 0 to below 1, spread evenly', () => {
    const random = seededRandom(42);
    const tenths = new Array<number>(10).fill(0);
    for (let draw = 0; draw < 100_000; draw += 1) {
      const tenth = Math.floor(10 * random());
      tenths[tenth] = (tenths[tenth] ?? Number.NaN) + 1;
    }
    expect(tenths).toHaveLength(10);
    for (const count of tenths) expect(Math.abs(count - 10_000)).toBeLessThan(500);
  });

  it('can be asked for between two bounds', () => {
    expect(between(() => 0, 3, 5)).toBe(3);
    expect(between(() => 0.5, 3, 5)).toBe(4);
  });
});
