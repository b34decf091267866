/**
 * Exact conversion factors.
 *
 * Pound and ounce: Weights and Measures Act 1985 (UK), Schedule 1 Part V, text as at 1991-02-01
 * (pound 0.453 592 37 kg, ounce 1/16 pound). Inch 2.54 cm. US gallon of 231 cubic inches: NIST SP 811,
 * read in a secondary copy; quart, cup and fluid ounce follow from it as gallon/4, /16 and /128.
 */
export const GRAMS_IN = {
  lb: 453.59237,
  oz: 28.349523125,
  kg: 1000,
} as const;

export const MILLILITRES_IN = {
  'US gallon': 3785.411784,
  'US quart': 946.352946,
  'US cup': 236.5882365,
  'US fl oz': 29.5735295625,
} as const;

/** mg/kg and the same dose in mg/lb, computed with the exact pound and rounded as written. */
export const MG_PER_KG_IN_MG_PER_LB: readonly (readonly [
  mgPerKg: number,
  mgPerLb: number,
  decimals: number,
])[] = [
  [0.2, 0.0907, 4],
  [5, 2.268, 3],
  [7.5, 3.402, 3],
  [8, 3.629, 3],
  [10, 4.536, 3],
  [12, 5.443, 3],
  [20, 9.072, 3],
];

/** Fahrenheit and Celsius, by definition (32 °F is 0 °C, 212 °F is 100 °C). */
export const FAHRENHEIT_CELSIUS: readonly (readonly [fahrenheit: number, celsius: number])[] = [
  [-40, -40],
  [32, 0],
  [50, 10],
  [60, 15.555556],
  [68, 20],
  [104, 40],
  [212, 100],
];
