/**
 * Water: its density, what a quart of it weighs, and what a scale standing in air then shows.
 *
 * Density: Tanaka, Girard, Davis, Peuto and Bignell, "Recommended table for the density of water between
 * 0 °C and 40 °C based on recent experimental reports", Metrologia 38 (2001) 301-309; air-free water at
 * 101 325 Pa. The values are computed from the formula published there, to seven digits.
 */
export const DENSITY_KG_PER_M3: readonly (readonly [celsius: number, density: number])[] = [
  [0, 999.8428],
  [1, 999.9017],
  [2, 999.9429],
  [3, 999.9672],
  [4, 999.9749],
  [5, 999.9668],
  [6, 999.9431],
  [7, 999.9045],
  [8, 999.8513],
  [9, 999.7839],
  [10, 999.7027],
  [11, 999.6081],
  [12, 999.5005],
  [13, 999.3801],
  [14, 999.2474],
  [15, 999.1026],
  [16, 998.9459],
  [17, 998.7778],
  [18, 998.5984],
  [19, 998.4079],
  [20, 998.2067],
  [21, 997.995],
  [22, 997.773],
  [23, 997.5408],
  [24, 997.2988],
  [25, 997.047],
  [26, 996.7857],
  [27, 996.5151],
  [28, 996.2353],
  [29, 995.9465],
  [30, 995.6488],
  [31, 995.3424],
  [32, 995.0275],
  [33, 994.7041],
  [34, 994.3724],
  [35, 994.0326],
  [36, 993.6847],
  [37, 993.329],
  [38, 992.9654],
  [39, 992.5941],
  [40, 992.2152],
];

/** One US liquid quart at a temperature: its true mass, and the reading in air. Grams. */
export interface QuartOfWater {
  readonly celsius: number;
  readonly trueGrams: number;
  readonly scaleGrams: number;
}

/**
 * Computed from the density above and the US liquid quart of 57.75 cubic inches (exact). The reading is
 * true mass x (1 - 1.2/rho) / (1 - 1.2/8000): air of 1.2 kg/m3 and weights of 8 000 kg/m3, the
 * conventional values of OIML D 28 (from memory). The third row is 60 °F.
 */
export const QUART_OF_WATER: readonly QuartOfWater[] = [
  { celsius: 4, trueGrams: 946.329, scaleGrams: 945.335 },
  { celsius: 10, trueGrams: 946.072, scaleGrams: 945.078 },
  { celsius: 140 / 9, trueGrams: 945.423, scaleGrams: 944.429 },
  { celsius: 15.6, trueGrams: 945.416, scaleGrams: 944.422 },
  { celsius: 20, trueGrams: 944.656, scaleGrams: 943.662 },
  { celsius: 25, trueGrams: 943.558, scaleGrams: 942.564 },
  { celsius: 30, trueGrams: 942.235, scaleGrams: 941.241 },
  { celsius: 40, trueGrams: 938.986, scaleGrams: 937.991 },
];

/** Four US cups, in pounds. Computed from the same density, quart and buoyancy as the table above. */
export const FOUR_CUPS_LB = {
  /** At this temperature the true mass is the value below. */
  celsius: 13.2,
  trueMass: 2.085,
  /** A scale standing in air shows less than this at every temperature from 0 to 40 °C. */
  neverShownAbove: 2.0842,
  /** What keepers are told a quart of water weighs: common practice, no source. */
  asTold: 2.085,
  /** How far the told value may lie from either of the two above, as a fraction. */
  agreesWithin: 0.0005,
} as const;
