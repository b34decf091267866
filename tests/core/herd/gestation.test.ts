import { describe, expect, test } from 'vitest';
import { birthWindow, GESTATION } from '../../../core/herd/gestation.ts';
import { DAY_MS } from '../../../core/moment.ts';
import { PRINTED_GESTATION } from '../../oracles/herd.ts';

describe('gestation', () => {
  test.each(['sheep', 'goat', 'cattle'] as const)(
    'of %s holds every printed range, its mean inside them',
    (species) => {
      const { meanDays, shortest, longest } = GESTATION[species];
      for (const [low, high] of PRINTED_GESTATION[species]) {
        expect(shortest).toBeLessThanOrEqual(low);
        expect(longest).toBeGreaterThanOrEqual(high);
        expect(meanDays).toBeGreaterThanOrEqual(low);
        expect(meanDays).toBeLessThanOrEqual(high);
      }
    },
  );

  test('a goat bred on 1 August is due about 29 December', () => {
    const { firstMs, likelyMs, lastMs } = birthWindow('goat', Date.UTC(2026, 7, 1));
    expect(new Date(likelyMs).toISOString()).toBe('2026-12-29T00:00:00.000Z');
    expect([(likelyMs - firstMs) / DAY_MS, (lastMs - likelyMs) / DAY_MS]).toEqual([10, 10]);
  });
});
