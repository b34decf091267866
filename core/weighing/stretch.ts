import { BLOCK_MS, type Block } from './blocks.ts';

/** The blocks since the step-on as moments in time, oldest first: one column for each thing known of a moment. */
export interface Stretch {
  readonly count: number;
  /** Seconds since the step-on. */
  readonly at: Float64Array;
  readonly grams: Float64Array;
  /** How much time it stands for, in seconds: half of that to either neighbour, and never a silence. */
  readonly lasts: Float64Array;
  /** How unquiet the load is here, in grams squared: within the block, and to the further of its neighbours. */
  readonly roughness: Float64Array;
}

/** A block behind a silence stands for no more than this, in seconds. */
const LASTS_MOST = 0.3;

/** Looks at each block together with its neighbours. */
export function stretchOf(blocks: readonly Block[]): Stretch {
  const count = blocks.length;
  const stretch = {
    count,
    at: new Float64Array(count),
    grams: new Float64Array(count),
    lasts: new Float64Array(count),
    roughness: new Float64Array(count),
  };
  let before: Block | undefined;
  for (let i = 0; i < count; i += 1) {
    const block = blocks[i];
    if (block === undefined) continue;
    const after = blocks[i + 1];
    const sides = before === undefined || after === undefined ? 1 : 2;
    const span = ((after ?? block).at - (before ?? block).at) / 1000;
    stretch.at[i] = block.at / 1000;
    stretch.grams[i] = block.grams;
    stretch.lasts[i] = Math.min(LASTS_MOST, span / sides);
    stretch.roughness[i] =
      block.squares / block.count + Math.max(changeBetween(before, block), changeBetween(block, after));
    before = block;
  }
  return stretch;
}

/** The squared change from one block to the next, brought to a tenth of a second: it grows with the time between. */
function changeBetween(from: Block | undefined, to: Block | undefined): number {
  if (from === undefined || to === undefined) return 0;
  return (to.grams - from.grams) ** 2 / Math.max(1, (to.at - from.at) / BLOCK_MS);
}
