/**
 * Exact 95 % limits for a Poisson count (Garwood), eggs counted to [lower, upper].
 *
 * Computed with scipy 1.17 as chi-squared quantiles halved; the rows for 10, 25 and 100 are also printed by public
 * calculators (see `GARWOOD_PRINTED`).
 */
export const GARWOOD_95: readonly (readonly [count: number, lower: number, upper: number])[] = [
  [0, 0, 3.688879],
  [1, 0.025318, 5.571643],
  [2, 0.242209, 7.224688],
  [3, 0.618672, 8.767273],
  [5, 1.623486, 11.668332],
  [10, 4.795389, 18.390356],
  [20, 12.21652, 30.888378],
  [40, 28.576586, 54.468647],
  [100, 81.363991, 121.626794],
  [200, 173.240883, 229.721982],
];

/**
 * The same limits as others print them, to two or three decimals: count, confidence, lower, upper.
 *
 * GraphPad's FAQ for 25, the calculatorhub page for 10 and 0, an answer on Cross Validated for 100.
 */
export const GARWOOD_PRINTED: readonly (readonly [
  count: number,
  level: number,
  lower: number,
  upper: number,
  decimals: number,
])[] = [
  [25, 0.9, 17.38, 34.92, 2],
  [25, 0.95, 16.18, 36.9, 2],
  [25, 0.99, 14.0, 41.0, 2],
  [10, 0.95, 4.8, 18.39, 2],
  [0, 0.95, 0, 3.689, 3],
  [100, 0.95, 81.36, 121.63, 2],
];

/**
 * Published multiplication factors of the McMaster chamber: dung in g, suspension in mL, mL counted, factor as printed.
 *
 * whitlock.com.au, chamber calculation page; printed without decimals.
 */
export const MCMASTER_FACTORS: readonly (readonly [
  grams: number,
  suspensionMl: number,
  countedMl: number,
  printed: number,
])[] = [
  [2, 60, 0.0375, 800],
  [2, 60, 0.15, 200],
  [2, 60, 0.3, 100],
  [2, 60, 0.6, 50],
  [2, 60, 0.9, 33],
  [2, 50, 0.0375, 667],
  [2, 50, 0.15, 167],
  [2, 50, 0.3, 83],
  [2, 50, 0.6, 42],
  [2, 50, 0.9, 28],
  [4, 60, 0.0375, 400],
  [4, 60, 0.15, 100],
  [4, 60, 0.3, 50],
  [4, 60, 0.6, 25],
  [4, 60, 0.9, 17],
];

/** A worked line of a public calculator: (2.5 + 2 + 55.5) mL over 2 g and 0.3 mL is 100 for each egg. */
export const WORKED_FACTOR = { grams: 2, suspensionMl: 2.5 + 2 + 55.5, countedMl: 0.3, factor: 100 } as const;

/** The chance of seeing one egg at all with an ideal count: eggs per gram, factor, 1 - exp(-epg/factor). Computed. */
export const CHANCE_OF_ONE: readonly (readonly [epg: number, factor: number, chance: number])[] = [
  [50, 50, 0.6321],
  [100, 50, 0.8647],
  [200, 50, 0.9817],
  [50, 15, 0.9643],
  [25, 5, 0.9933],
];
