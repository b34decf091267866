/**
 * Published data of the faecal egg count reduction test, with results of independent programs.
 *
 * All limits in per cent as printed unless named otherwise. "Run" means run here in the program named.
 */

/**
 * Fourteen sheep before and after a benzimidazole, eggs per gram at factor 50: the data set `epgs` of the R package
 * eggCounts 2.5-1. Limits (a) 95 % run in that package; (b) and (c) 90 % run in bayescount with its covariance uncapped;
 * the others computed with scipy.
 */
export const EPGS = {
  factor: 50,
  before: [0, 3500, 400, 150, 0, 0, 0, 200, 0, 400, 0, 2000, 2900, 9300],
  after: [0, 200, 0, 50, 300, 0, 0, 0, 0, 0, 0, 0, 100, 800],
  eggs: { before: 377, after: 29 },
  moments: {
    mean: [1346.428571429, 103.571428571],
    variance: [6627101.64835, 48640.1098901],
    covariance: 498859.89011,
  },
  percent: 92.3076923077,
  logUnpaired95: [62.9454200974, 98.4031232364],
  logUnpaired90: [71.6461668665, 97.9131005902],
  logPaired95: [86.1578916187, 95.7252467613],
  logPaired90: [87.5488676694, 95.2476934578],
  deltaPaired90: [88.5750023534, 95.3962337155],
  deltaPaired95: [87.6980584394, 95.8456067016],
  deltaUnpaired90: [80.8095906417, 98.8949786441],
  binomial95: [89.167507605, 94.5813948959],
  /**
   * Counts divided by 50, shapes 1.4 and 0.8 over 1 - 0.5, computed with mpmath to 40 digits. bayescount gives 3.5517e-10,
   * having taken the lower tail from 1.
   */
  knownShapes: { shapes: [2.8, 1.6], resistance: 3.55382116e-10, susceptibility: 0.2369393956 },
} as const;

/** Rows of a milk-transfer study in foals: eggs per gram, and limits (a) as its authors print them. */
export const FOALS = [
  {
    name: 'six foals of drenched mares',
    before: [30, 45, 180, 90, 345, 0],
    after: [45, 30, 45, 75, 30, 0],
    percent: [67.3913, 4],
    limits: [-6.341105, 90.00079, 6],
  },
  {
    name: 'the same without the last foal',
    before: [30, 45, 180, 90, 345],
    after: [45, 30, 45, 75, 30],
    percent: [67.3913, 4],
    limits: [6.22162, 88.66128, 5],
  },
  {
    name: 'eight untreated foals',
    before: [375, 150, 270, 360, 195, 300, 270, 570],
    after: [45, 30, 45, 15, 15, 90, 15, 825],
    percent: [56.626506, 6],
    limits: [-115.5819731, 91.2735747, 7],
  },
] as const;

/** Ten raw counts of the bayescount vignette; limits as fractions, run in bayescount with its covariance uncapped. */
export const VIGNETTE = {
  before: [14, 22, 7, 29, 11, 1, 39, 6, 3, 0],
  after: [0, 2, 1, 1, 2, 0, 5, 2, 0, 3],
  percent: 87.8787879,
  correlation: 0.530789774,
  deltaPaired95: [0.79732287, 0.93950693],
  deltaUnpaired95: [0.75396261, 0.95976244],
  logPaired95: [0.76019565, 0.93873181],
  logUnpaired95: [0.69430331, 0.95193805],
  deltaPaired90: [0.81306622, 0.93203641],
  deltaUnpaired90: [0.77979138, 0.95136838],
  logPaired90: [0.78930305, 0.93026772],
  logUnpaired90: [0.73990084, 0.9435124],
  binomial99: [0.78951605, 0.93605675],
  binomial98: [0.79876741, 0.93123984],
  /** Likeliest shapes as that package finds them, to its own tolerance of some 3 in 10,000. */
  shapes: [0.89744346, 3.4090872],
  adjustedShapes: [1.91266817, 7.26558589],
  /** Thresholds of the vignette. */
  expected: 0.95,
  lowest: 0.85,
  likeliestShapes: { resistance: 0.013217612, susceptibility: 0.29787456 },
  /** Both shapes taken from the counts before. */
  oneShape: { resistance: 0.021627673, susceptibility: 0.33529548 },
  unitShapes: { resistance: 0.0502517969366, susceptibility: 0.365328221948 },
} as const;

/** Beta-negative-binomial mechanics, computed with mpmath to 30 digits and run in bayescount. */
export const BETA_NEGATIVE_BINOMIAL = {
  law: { shape: 2.5, beta: 6, alpha: 4 },
  upTo3: 0.818869822055,
  from3: 0.2809440481,
  at0: 0.310135953695,
  /** Ten goats, 200 eggs before, none after, shapes 3.8 and 2.4 over 1 - 0.5, lowest efficacy 0.90. */
  goats: {
    animals: 10,
    eggsBefore: 200,
    shapes: [7.6, 4.8],
    efficacy: 0.9,
    p: 0.724637681159,
    pVariance: 0.000720353473658,
    mean: 0.295734764573,
    variance: 0.000791770034913,
    alpha: 77.4975213712,
    beta: 184.553243892,
    shape: 48,
    susceptibility: 2.38650573644e-7,
  },
} as const;

/** Lower one-sided 95 % limit after no egg was seen, ignoring what animals differ by: eggs before, limit. scipy. */
export const NONE_AFTER: readonly (readonly [eggsBefore: number, lower: number])[] = [
  [30, 0.907886],
  [40, 0.929539],
  [60, 0.952076],
  [100, 0.970775],
  [299, 0.990064],
];
