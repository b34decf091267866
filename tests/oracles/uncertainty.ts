/**
 * A published error budget, to check the arithmetic of combining uncertainties against.
 *
 * EURACHEM/CITAC Guide "Quantifying Uncertainty in Analytical Measurement", example A1: the concentration
 * of a calibration standard, c = 1000 m P / V. u(V) as published, to all its digits; u_c computed from the
 * published inputs without rounding the parts first (the guide rounds them and prints 0.9).
 */
export const QUAM_A1 = {
  /** Purity; rectangular, half width 0.0001. */
  purity: { value: 0.9999, halfWidth: 0.0001, u: 5.7735e-5 },
  /** Milligrams. */
  mass: { value: 100.28, u: 0.05 },
  /** Millilitres: flask tolerance triangular; filling and temperature from memory, they give u(V) exactly. */
  volume: {
    value: 100,
    flaskHalfWidth: 0.1,
    fillingU: 0.02,
    temperatureHalfWidth: 4 * 2.1e-4 * 100,
    u: 0.0664730521840743,
  },
  /** Milligrams per litre. */
  concentration: { value: 1002.69972, u: 0.8352, uWithin: 0.0005, expandedK2: 1.67 },
  /** What each input adds, in mg/L. */
  parts: { purity: 0.0579, mass: 0.4999, volume: 0.6665 },
} as const;
