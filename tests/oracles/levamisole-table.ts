/**
 * Levamisole drench volumes by body weight, computed here from exact factors: pound 0.45359237 kg, US
 * quart 946.352946 mL, and one package of 46.8 g levamisole hydrochloride (the package size: 21 CFR
 * 520.1242a(a), text of 2026-04-05). Unrounded to the digits written, so that rounding can be tested.
 *
 * 8 mg/kg is the sheep and cattle drench dose (FDA FOI summary, NADA 200-225, 1998-08-27). 12 mg/kg for
 * goats is extra-label: the goat guideline of July 2006 (Kaplan, Scharko) implies it. 1,048 mL is the
 * mixing volume printed in that guideline. The gallon mix is from memory and is here as arithmetic only.
 */
export const PACKET_MG = 46_800;

/** Made up to these volumes, in millilitres, and the strengths that follow, in mg/mL. */
export const MIXES = {
  quart: { ml: 946.352946, mgPerMl: 49.453 },
  ml1048: { ml: 1048, mgPerMl: 44.656 },
  twoQuarts: { ml: 1892.705892, mgPerMl: 24.727 },
  gallon: { ml: 3785.411784, mgPerMl: 12.363 },
} as const;

/** One body weight and what each dose and mix give. Volumes in millilitres. */
export interface LevamisoleRow {
  readonly lb: number;
  readonly kg: number;
  /** Milligrams at 12 mg/kg. */
  readonly mgAt12: number;
  readonly at12Quart: number;
  readonly at12Ml1048: number;
  readonly at12TwoQuarts: number;
  readonly at8Quart: number;
  readonly at8TwoQuarts: number;
  readonly at8Gallon: number;
}

function row(
  lb: number,
  kg: number,
  mgAt12: number,
  at12Quart: number,
  at12Ml1048: number,
  at12TwoQuarts: number,
  at8Quart: number,
  at8TwoQuarts: number,
  at8Gallon: number,
): LevamisoleRow {
  return { lb, kg, mgAt12, at12Quart, at12Ml1048, at12TwoQuarts, at8Quart, at8TwoQuarts, at8Gallon };
}

export const LEVAMISOLE_TABLE: readonly LevamisoleRow[] = [
  row(5, 2.268, 27.216, 0.5503, 0.6094, 1.1007, 0.3669, 0.7338, 1.468),
  row(10, 4.5359, 54.431, 1.1007, 1.2189, 2.2013, 0.7338, 1.4676, 2.935),
  row(15, 6.8039, 81.647, 1.651, 1.8283, 3.302, 1.1007, 2.2013, 4.403),
  row(20, 9.0718, 108.862, 2.2013, 2.4378, 4.4027, 1.4676, 2.9351, 5.87),
  row(25, 11.3398, 136.078, 2.7517, 3.0472, 5.5033, 1.8344, 3.6689, 7.338),
  row(30, 13.6078, 163.293, 3.302, 3.6567, 6.604, 2.2013, 4.4027, 8.805),
  row(40, 18.1437, 217.724, 4.4027, 4.8755, 8.8053, 2.9351, 5.8702, 11.74),
  row(50, 22.6796, 272.155, 5.5033, 6.0944, 11.0066, 3.6689, 7.3378, 14.676),
  row(60, 27.2155, 326.587, 6.604, 7.3133, 13.208, 4.4027, 8.8053, 17.611),
  row(75, 34.0194, 408.233, 8.255, 9.1416, 16.5099, 5.5033, 11.0066, 22.013),
  row(80, 36.2874, 435.449, 8.8053, 9.7511, 17.6106, 5.8702, 11.7404, 23.481),
  row(100, 45.3592, 544.311, 11.0066, 12.1888, 22.0133, 7.3378, 14.6755, 29.351),
  row(120, 54.4311, 653.173, 13.208, 14.6266, 26.4159, 8.8053, 17.6106, 35.221),
  row(150, 68.0389, 816.466, 16.5099, 18.2833, 33.0199, 11.0066, 22.0133, 44.027),
  row(200, 90.7185, 1088.622, 22.0133, 24.3777, 44.0265, 14.6755, 29.351, 58.702),
  row(250, 113.3981, 1360.777, 27.5166, 30.4721, 55.0331, 18.3444, 36.6888, 73.378),
];

/** The worked example in full: 46.8 g made up to a US quart, 30 lb at 12 mg/kg. Computed. */
export const WORKED_EXAMPLE = {
  lb: 30,
  mgPerKg: 12,
  kg: 13.6077711,
  mg: 163.2932532,
  mgPerMl: 49.453,
  ml: 3.30199,
  shownOnTenthMarks: '3.3 mL',
} as const;

/**
 * FDA FOI summary, NADA 200-225, 1998-08-27: 544.5 g with water to the 3 L mark; sheep 1 mL per 50 lb,
 * cattle 2 mL per 100 lb. The summary says "approximately 180 mg/mL"; grams over volume give 181.5,
 * and with it the volumes are 8.00 mg/kg (computed).
 */
export const CONCENTRATE = {
  mg: 544_500,
  ml: 3000,
  mgPerMl: 181.5,
  sheep: [
    [50, 1],
    [100, 2],
    [150, 3],
    [200, 4],
  ],
  cattle: [
    [100, 2],
    [300, 6],
    [500, 10],
    [700, 14],
    [1000, 20],
  ],
} as const;

/**
 * Young goats, oral drench, five to a group, three days running: no sign at the first level, one of five
 * hyperactive at the second, two of five with cholinergic signs at the third. Am J Vet Res 1990;51:1126,
 * read as an abstract (the citation is from memory). mg/kg.
 */
export const KID_TOXICITY_MG_PER_KG = { noSign: 11.88, firstSign: 23.76, cholinergic: 35.64 } as const;
