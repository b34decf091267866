/**
 * Data sets that come with R (ChickWeight; BodyWeight of nlme), and one kid made up with a bad weighing.
 *
 * Theil-Sen slopes with 95 % limits and least-squares lines run in R 4.2 and scipy 1.17. Days, and grams or kilograms.
 */
export const GROWTH_SERIES = [
  {
    name: 'chick 1',
    days: [0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 21],
    weights: [42, 51, 59, 64, 76, 93, 106, 125, 149, 171, 199, 205],
    slope: 8,
    limits: [6.166667, 9.642857],
    leastSquares: 7.987898956,
    intercept: 11.5,
  },
  {
    name: 'chick 1 with one weight mistyped',
    days: [0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 21],
    weights: [42, 51, 59, 64, 76, 193, 106, 125, 149, 171, 199, 205],
    slope: 7.925,
    limits: null,
    leastSquares: 7.82150961,
    intercept: null,
  },
  {
    name: 'chick 24, stunted',
    days: [0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 21],
    weights: [42, 52, 58, 74, 66, 68, 70, 71, 72, 72, 76, 74],
    slope: 1,
    limits: [0.5, 1.666667],
    leastSquares: 1.2075328997,
    intercept: null,
  },
  {
    name: 'chick 35',
    days: [0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 21],
    weights: [41, 53, 64, 87, 123, 158, 201, 238, 287, 332, 361, 373],
    slope: 18.08823529,
    limits: null,
    leastSquares: 17.25881107,
    intercept: -19.47058824,
  },
  {
    name: 'rat 1, weighed on uneven days',
    days: [1, 8, 15, 22, 29, 36, 43, 44, 50, 57, 64],
    weights: [240, 250, 255, 260, 262, 258, 266, 266, 265, 272, 278],
    slope: 0.4615384615,
    limits: null,
    leastSquares: 0.4844070758,
    intercept: null,
  },
  {
    name: 'a kid with one bad weighing',
    days: [0, 14, 28, 42, 56, 70],
    weights: [20.1, 21.0, 21.9, 20.2, 23.4, 24.1],
    slope: 0.05714285714,
    limits: null,
    leastSquares: 0.05204081633,
    intercept: null,
  },
] as const;

/**
 * Gains over 14 days as a published goat performance test prints them: pounds gained, pounds a day.
 *
 * mdgoattest, 8 August 2013. The mean was 0.310 lb, printed as 140 g, the median 0.314 lb, printed as 142 g.
 */
export const PRINTED_GAINS = {
  days: 14,
  rows: [
    [-2.2, -0.157],
    [4.4, 0.314],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: printed so, and no root of anything.
    [9.9, 0.707],
  ],
  poundsAsGrams: [
    [0.31, 140.6],
    [0.162, 73.5],
    [0.314, 142.4],
  ],
} as const;
