/** The readings of a tenth of a second, kept as their number, their mean and how they differ. */
export interface Block {
  /** Number of the block since the step-on. */
  readonly index: number;
  /** When its readings came, in the mean: milliseconds since the step-on. */
  readonly at: number;
  readonly count: number;
  /** Mean load in grams. */
  readonly grams: number;
  /** Sum of squared differences from the mean, in grams squared. */
  readonly squares: number;
}

/** How long a block is, in milliseconds: a slow scale fills every second or third, a fast one fills each several times. */
export const BLOCK_MS = 100;
/** How far back the blocks reach, in milliseconds. */
export const MEMORY_MS = 10_000;
/** The first so many milliseconds are never forgotten: how an animal came tells whether it came alone. */
export const LANDING_MS = 4000;

/**
 * Adds a reading to blocks counted from `startMs`, both times uptimes in milliseconds.
 *
 * Forgets what is neither of the landing nor of late, so that there are never more blocks than both hold.
 */
export function addReading(
  blocks: readonly Block[],
  startMs: number,
  atMs: number,
  grams: number,
): readonly Block[] {
  const at = atMs - startMs;
  const index = Math.floor(at / BLOCK_MS);
  const last = blocks.at(-1);
  if (last !== undefined && last.index === index) return [...blocks.slice(0, -1), joined(last, at, grams)];
  const landed = (blocks[0]?.index ?? index) + LANDING_MS / BLOCK_MS;
  const kept = blocks.filter((block) => block.index < landed || at - block.at <= MEMORY_MS);
  return [...kept, { index, at, count: 1, grams, squares: 0 }];
}

function joined(block: Block, at: number, grams: number): Block {
  const count = block.count + 1;
  const mean = block.grams + (grams - block.grams) / count;
  return {
    index: block.index,
    at: block.at + (at - block.at) / count,
    count,
    grams: mean,
    squares: block.squares + (grams - block.grams) * (grams - mean),
  };
}
