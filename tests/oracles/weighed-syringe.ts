/**
 * Ten deliveries of a 6 mL syringe at its 3 mL mark, weighed on a scale in steps of 0.1 g, worked through by hand.
 *
 * Masses: sum 29.2 g, mean 2.92 g, squared deviations 0.036 g2, over 9 is 0.004, root 0.063246 g. Volume per gram of
 * water at 20 degC on a scale in air: Z = 1.002852 mL/g (Tanaka's density and conventional buoyancy, tests/oracles/water).
 * Mean 2.928328 mL, bias -0.071672 mL, spread 0.063426 mL.
 * Uncertainty of the bias: spread / sqrt(10) = 0.020057; the scale, 29.2 g being 292 divisions, 0.1 g rectangular, two
 * readings, over ten: 0.1 / sqrt(3) * sqrt(2) / 10 * Z = 0.008188; water 17.5 to 22.5 degC, densities 998.69 and 997.66
 * kg/m3 between the tabled ones: 0.00103 * 2.928 / 2 / sqrt(3) = 0.00087. Together 0.02168 mL.
 */
export const WEIGHED_SYRINGE = {
  capacityMl: 6,
  graduationMl: 0.1,
  markMl: 3,
  celsius: 20,
  divisionGrams: 0.1,
  grams: [2.9, 3, 2.9, 2.9, 3, 2.9, 2.8, 3, 2.9, 2.9],
  meanMl: 2.928328,
  biasMl: -0.071672,
  spreadMl: 0.063426,
  biasUncertaintyMl: 0.02168,
  /** 4 % of what is expelled from half the capacity up (ISO 7886-1, this size from memory). */
  allowedMl: 0.12,
  /** |bias| + 2 u(bias) + 2 spread. */
  toleranceAtMarkMl: 0.071672 + 2 * 0.02168 + 2 * 0.063426,
} as const;
