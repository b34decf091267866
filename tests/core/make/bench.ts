import { grams } from '../../../core/quantity/mass.ts';
import { type Bench, BLANK_BENCH } from '../../../core/weighing/bench.ts';

/** A 1 g bench at rest with this many grams on it. */
export function makeBench(onIt: number, over: Partial<Bench> = {}): Bench {
  return {
    ...BLANK_BENCH,
    live: grams(onIt),
    steady: grams(onIt),
    uncertainty: grams(0.58),
    division: grams(1),
    ...over,
  };
}

/** The same bench while its value is still moving. */
export function movingBench(onIt: number): Bench {
  return makeBench(onIt, { steady: null, uncertainty: null });
}
