/**
 * Ready-made drenches: millilitres by body weight, computed here with the exact pound (0.45359237 kg) and
 * the labelled strength, and points printed on labels and in agency summaries, each with its source.
 */
export interface ReadyMadeColumn {
  readonly name: string;
  readonly mgPerMl: number;
  readonly mgPerKg: number;
  /** Pounds and millilitres. */
  readonly rows: readonly (readonly [lb: number, ml: number])[];
}

const LB = [5, 11, 25, 26, 30, 50, 100, 150, 200] as const;

function column(name: string, mgPerMl: number, mgPerKg: number, ml: readonly number[]): ReadyMadeColumn {
  return { name, mgPerMl, mgPerKg, rows: LB.flatMap((lb, i) => (ml[i] === undefined ? [] : [[lb, ml[i]]])) };
}

export const READY_MADE: readonly ReadyMadeColumn[] = [
  column('albendazole', 113.6, 7.5, [0.15, 0.329, 0.749, 0.779, 0.898, 1.497, 2.995, 4.492, 5.989]),
  column('albendazole', 113.6, 10, [0.2, 0.439, 0.998, 1.038, 1.198, 1.996, 3.993, 5.989, 7.986]),
  column('albendazole', 113.6, 20, [0.399, 0.878, 1.996, 2.076, 2.396, 3.993, 7.986, 11.979, 15.972]),
  column('fenbendazole', 100, 5, [0.113, 0.249, 0.567, 0.59, 0.68, 1.134, 2.268, 3.402, 4.536]),
  column('fenbendazole', 100, 10, [0.227, 0.499, 1.134, 1.179, 1.361, 2.268, 4.536, 6.804, 9.072]),
  column('ivermectin', 0.8, 0.2, [0.567, 1.247, 2.835, 2.948, 3.402, 5.67, 11.34, 17.01, 22.68]),
  column('ivermectin', 0.8, 0.4, [1.134, 2.495, 5.67, 5.897, 6.804, 11.34, 22.68, 34.019, 45.359]),
  column('moxidectin', 1, 0.2, [0.454, 0.998, 2.268, 2.359, 2.722, 4.536, 9.072, 13.608, 18.144]),
  column('moxidectin', 1, 0.4, [0.907, 1.996, 4.536, 4.717, 5.443, 9.072, 18.144, 27.216, 36.287]),
];

/** Cattle of 500 and 1,000 lb, computed as above. */
export const READY_MADE_CATTLE: readonly ReadyMadeColumn[] = [
  {
    name: 'albendazole',
    mgPerMl: 113.6,
    mgPerKg: 10,
    rows: [
      [500, 19.964],
      [1000, 39.929],
    ],
  },
  {
    name: 'fenbendazole',
    mgPerMl: 100,
    mgPerKg: 5,
    rows: [
      [500, 11.34],
      [1000, 22.68],
    ],
  },
  {
    name: 'fenbendazole',
    mgPerMl: 100,
    mgPerKg: 10,
    rows: [
      [500, 22.68],
      [1000, 45.359],
    ],
  },
];

/** A point in print. `within` is how far the printed, rounded volume may lie from the exact one. */
export interface PrintedPoint {
  readonly source: string;
  readonly mgPerMl: number;
  readonly mgPerKg: number;
  readonly lb: number;
  readonly ml: number;
  readonly within: number;
}

const GOAT_LABEL = 'label, fenbendazole 100 mg/mL, goats, 2021-09-13 (rounded to 0.1 mL)';

const CATTLE_LABEL = 'label, fenbendazole 100 mg/mL, cattle (rounded to 2.3 mL per 100 lb)';
/** The chart gives millilitres; the rate of albendazole and of levamisole is implied by them. */
const GOAT_CHART =
  'goat chart, July 2006 (Univ. Georgia, Univ. Kentucky), read in a copy; rounded to 0.1 mL or more';

export const PRINTED_POINTS: readonly PrintedPoint[] = [
  {
    source: '21 CFR 520.1454, moxidectin, sheep: 1 mL per 11 lb',
    mgPerMl: 1,
    mgPerKg: 0.2,
    lb: 11,
    ml: 1,
    within: 0.003,
  },
  {
    source: 'FDA FOI summary, NADA 131-392, 1988-07-26: 3.0 mL per 26 lb',
    mgPerMl: 0.8,
    mgPerKg: 0.2,
    lb: 26,
    ml: 3,
    within: 0.018,
  },
  {
    source: 'FDA FOI summary, NADA 110-048, 2008-01-24: 4 mL per 100 lb',
    mgPerMl: 113.6,
    mgPerKg: 10,
    lb: 100,
    ml: 4,
    within: 0.002,
  },
  { source: GOAT_LABEL, mgPerMl: 100, mgPerKg: 5, lb: 25, ml: 0.6, within: 0.059 },
  { source: GOAT_LABEL, mgPerMl: 100, mgPerKg: 5, lb: 50, ml: 1.2, within: 0.059 },
  { source: GOAT_LABEL, mgPerMl: 100, mgPerKg: 5, lb: 75, ml: 1.7, within: 0.015 },
  { source: GOAT_LABEL, mgPerMl: 100, mgPerKg: 5, lb: 100, ml: 2.3, within: 0.015 },
  { source: GOAT_LABEL, mgPerMl: 100, mgPerKg: 5, lb: 125, ml: 2.9, within: 0.024 },
  { source: CATTLE_LABEL, mgPerMl: 100, mgPerKg: 5, lb: 100, ml: 2.3, within: 0.015 },
  { source: CATTLE_LABEL, mgPerMl: 100, mgPerKg: 5, lb: 500, ml: 11.5, within: 0.015 },
  { source: CATTLE_LABEL, mgPerMl: 100, mgPerKg: 5, lb: 1000, ml: 23, within: 0.015 },
  { source: CATTLE_LABEL, mgPerMl: 100, mgPerKg: 5, lb: 1500, ml: 34.5, within: 0.015 },
  { source: GOAT_CHART, mgPerMl: 113.6, mgPerKg: 20, lb: 25, ml: 2, within: 0.003 },
  { source: GOAT_CHART, mgPerMl: 100, mgPerKg: 10, lb: 25, ml: 1.1, within: 0.031 },
  { source: GOAT_CHART, mgPerMl: 0.8, mgPerKg: 0.4, lb: 25, ml: 6, within: 0.059 },
  { source: GOAT_CHART, mgPerMl: 44.66, mgPerKg: 12, lb: 25, ml: 3, within: 0.016 },
  { source: GOAT_CHART, mgPerMl: 1, mgPerKg: 0.3, lb: 25, ml: 3.4, within: 0.0006 },
];
