import { describe, expect, test } from 'vitest';
import { type Bench, BLANK_BENCH, feedBench } from '../../../core/weighing/bench.ts';
import type { Reading } from '../../../core/weighing/reading.ts';
import { BENCH, makeReading } from '../make/reading.ts';

/** Ten readings a second of whatever is on the bench. */
function feed(
  values: readonly number[],
  over: Partial<Reading> = {},
  start: Bench = BLANK_BENCH,
  from = 0,
): Bench {
  return values.reduce(
    (bench, value, i) =>
      feedBench(
        bench,
        makeReading(from + i * 100, value, { role: 'bench', division: { unit: 'g', value: 1 }, ...over }),
        BENCH,
      ),
    start,
  );
}

const still = Array.from({ length: 12 }, () => 1202);

describe('the bench', () => {
  test('comes to rest after most of a second of equal readings, not before', () => {
    expect(feed(still.slice(0, 9)).steady).toBeNull();
    expect(feed(still).steady?.value).toBe(1202);
  });

  test('is at rest between two neighbouring values, and shows their mean', () => {
    const flicker = still.map((value, i) => value + (i % 2));
    const steady = feed(flicker).steady?.value ?? 0;
    expect(steady).toBeGreaterThan(1202.3);
    expect(steady).toBeLessThan(1202.7);
  });

  test('is not at rest while water runs in, though each reading is near the last', () => {
    expect(feed(still.map((value, i) => value + i)).steady).toBeNull();
  });

  test('is not at rest while the scale itself says it moves', () => {
    expect(feed(still, { stability: 'moving' }).steady).toBeNull();
  });

  test('starts its rest over when it is tared', () => {
    const tared = feed([0, 0, 0], { net: true }, feed(still), 1200);
    expect(tared).toMatchObject({ steady: null, net: true });
    expect(tared.samples).toHaveLength(3);
  });

  test('blanks on a fault, and on more than it can carry', () => {
    expect(feed([1202], { fault: 'under' }, feed(still), 1200)).toMatchObject({
      live: null,
      steady: null,
      fault: 'under',
    });
    expect(feed([5001], {}, feed(still), 1200)).toMatchObject({ live: null, steady: null, fault: 'over' });
  });

  test('does not rest on readings from both sides of a silence', () => {
    const before = feed(still);
    expect(feed([1202, 1202], {}, before, 60_000).steady).toBeNull();
  });

  test('knows a steady value to its own step', () => {
    expect(feed(still).uncertainty?.value).toBeCloseTo(2 / Math.sqrt(3), 9);
    expect(feed(still.map(() => 300)).uncertainty?.value).toBeCloseTo(1 / Math.sqrt(3), 9);
  });
});
