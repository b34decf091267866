/**
 * How far a scale in use may be off, in divisions, at a load given in divisions.
 *
 * NIST Handbook 44, 2.20, Table 6, class III, maintenance. The steps at 500, 2,000 and 4,000 divisions and half of the
 * figures (acceptance: 1 d at 1,000 d, 1.5 d at 3,000 d, 2.5 d at capacity) were read in a weigh-module handbook; 3 d
 * from 2,000 to 4,000 and 5 d above were read in a trade forum. That maintenance is twice acceptance is from memory.
 */
export const MAINTENANCE_CLASS_III: readonly (readonly [loadD: number, allowedD: number])[] = [
  [0, 1],
  [1, 1],
  [500, 1],
  [501, 2],
  [1000, 2],
  [2000, 2],
  [2001, 3],
  [3000, 3],
  [4000, 3],
  [4001, 5],
  [10_000, 5],
];

/** A platform for single animals of 150 kg by 50 g, worked through: kilograms on it, and the error allowed in kilograms. */
export const ANIMAL_SCALE_150_BY_50: readonly (readonly [loadKg: number, allowedKg: number])[] = [
  [25, 0.05],
  [25.05, 0.1],
  [100, 0.1],
  [100.05, 0.15],
  [150, 0.15],
];
