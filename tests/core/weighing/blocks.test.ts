import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addReading, BLOCK_MS, type Block, LANDING_MS, MEMORY_MS } from '../../../core/weighing/blocks.ts';

test('blocks keep the number, the mean and the spread of what went into them', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 150_000 }), { minLength: 1, maxLength: 20 }), (loads) => {
      const blocks = loads.reduce<readonly Block[]>((all, load, i) => addReading(all, 0, i * 4, load), []);
      const [block] = blocks;
      const mean = loads.reduce((sum, load) => sum + load, 0) / loads.length;
      expect(blocks).toHaveLength(1);
      expect(block?.count).toBe(loads.length);
      expect(block?.grams).toBeCloseTo(mean, 6);
      expect(block?.squares).toBeCloseTo(
        loads.reduce((sum, load) => sum + (load - mean) ** 2, 0),
        2,
      );
    }),
  );
});

test('the landing and the last seconds are kept, and nothing between', () => {
  let blocks: readonly Block[] = [];
  for (let at = 0; at <= 60_000; at += 50) blocks = addReading(blocks, 0, at, 5000);
  const between = blocks.filter(({ at }) => at > LANDING_MS && at < 60_000 - MEMORY_MS - BLOCK_MS);
  expect(between).toEqual([]);
  expect(blocks.filter(({ at }) => at < LANDING_MS)).toHaveLength(LANDING_MS / BLOCK_MS);
  expect(blocks.length).toBeLessThanOrEqual((LANDING_MS + MEMORY_MS) / BLOCK_MS + 1);
});
