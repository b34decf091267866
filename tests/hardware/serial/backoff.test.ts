import { describe, expect, it } from 'vitest';
import { retryDelayMs } from '../../../hardware/serial/backoff.ts';

describe('the wait before a retry', () => {
  it('doubles from a tenth of a second and stays at a second', () => {
    const waits = [0, 1, 2, 3, 4, 5, 1000].map((attempt) => retryDelayMs(attempt, () => 0.5));
    expect(waits).toEqual([100, 200, 400, 800, 1000, 1000, 1000]);
  });

  it('is spread by a quarter either way and never longer than 2 s', () => {
    expect(retryDelayMs(0, () => 0)).toBe(75);
    expect(retryDelayMs(9, () => 0.999999)).toBeLessThan(2000);
    expect(retryDelayMs(9, () => 0.999999)).toBeGreaterThan(1249);
  });
});
