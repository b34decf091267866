import type { PastVisit } from './score.ts';

/** A band of the ratio of a scale's division to the weight on it, the low end included. */
export interface Band {
  readonly name: string;
  readonly has: (visit: PastVisit) => boolean;
}

function band(name: string, lowPercent: number, highPercent: number): Band {
  return {
    name,
    has: ({ division, truth }) => {
      const percent = (100 * division) / truth;
      return percent >= lowPercent && percent < highPercent;
    },
  };
}

/** How coarse the scale was for the animal: from far finer than its motion to coarser than a dose can bear. */
export const BANDS: readonly Band[] = [
  band('division < 0.05 %', 0, 0.05),
  band('0.05 to 0.2 %', 0.05, 0.2),
  band('0.2 to 1 %', 0.2, 1),
  band('1 % and more', 1, Number.POSITIVE_INFINITY),
];
