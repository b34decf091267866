/** A source of numbers from 0 (included) to 1 (excluded). */
export type Random = () => number;

/** A repeatable source of numbers: the same seed gives the same row. For simulation, not for secrets. */
export function seededRandom(seed: number): Random {
  // A 32-bit state stepped by an odd constant and mixed by two multiplications: every seed runs 2^32 numbers.
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
}

/** A number between two bounds. */
export function between(random: Random, low: number, high: number): number {
  return low + (high - low) * random();
}
