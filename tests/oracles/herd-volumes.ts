/**
 * Volumes for goats at 12 mg/kg, in mL, from a packet of 46.8 g made up to one and to two US quarts.
 *
 * Computed by hand from the exact pound and quart: 12 mg/kg x lb x 0.45359237 / 49.4530 (24.7265) mg/mL.
 */
export const CHECK_VALUES_12: readonly {
  readonly lb: number;
  readonly oneQuart: number;
  readonly twoQuarts: number;
}[] = [
  { lb: 10, oneQuart: 1.1007, twoQuarts: 2.2013 },
  { lb: 30, oneQuart: 3.302, twoQuarts: 6.604 },
  { lb: 60, oneQuart: 6.604, twoQuarts: 13.208 },
  { lb: 100, oneQuart: 11.0066, twoQuarts: 22.0133 },
];
