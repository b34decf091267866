import type { Range } from './draws.ts';

/** How active an animal is, by the coefficient of variation of its load while it stands. */
export type Grade = 'calm' | 'restless' | 'violent';
/** The grades, least active first. */
export const GRADES = ['calm', 'restless', 'violent'] as const;

/** How the animals of one grade move. Shares are of body weight, rates a second, times in seconds. */
export interface GradeParameters {
  /** What the coefficient of variation of standing must come out as; draws that miss it are drawn again. */
  readonly variation: Range;
  readonly breathing: { readonly share: Range; readonly perSecond: Range };
  /** Shifting of weight as an Ornstein-Uhlenbeck process: standard deviation, and the corner of its spectrum. */
  readonly shifting: { readonly share: Range; readonly cornerHz: Range };
  /** Bursts of steps that come at random (Poisson); `more` is the chance that another step follows. */
  readonly bursts: {
    readonly perSecond: Range;
    readonly more: Range;
    readonly share: Range;
  };
  /** Chances of a visit, and for feet a rate a second. */
  readonly gateLean: number;
  readonly handler: number;
  readonly footOffPerSecond: number;
}

/** What is drawn for the visits of one set. */
export interface ParameterSet {
  readonly name: 'tuning' | 'report';
  readonly firstSeed: number;
  readonly grades: Readonly<Record<Grade, GradeParameters>>;
  readonly weightGrams: Range;
  readonly divisions: readonly [number, ...number[]];
  /** Readings a second; each visit draws one, and a few per cent around it. */
  readonly rates: readonly [number, ...number[]];
  readonly walkOn: Range;
  readonly legRise: Range;
  /** How often an animal stops with its fore feet on, and for how long. */
  readonly halfOn: { readonly chance: number; readonly lasts: Range };
  readonly stands: Range;
  readonly earlyExit: { readonly chance: number; readonly stands: Range };
  readonly secondAnimal: { readonly chance: number; readonly share: Range };
  readonly resonance: { readonly hz: Range; readonly damping: Range };
  /** The mean delay of the scale's own filter, first order or a moving average. */
  readonly lag: Range;
  /** How unevenly readings come: the share of an interval by which one may be early or late. */
  readonly jitter: Range;
  /** The chance that a reading is lost on the line. */
  readonly lost: number;
}

/**
 * Assumed, all of it: no source gives spectra of a standing animal. Magnitudes follow the engineering row of the
 * published facts (breathing 0.2 to 0.7 Hz at 0.2 to 0.5 %, shifting 0.3 to 1 Hz at 1 to 3 %, taken as the amplitude
 * of the most restless, so 0.7 to 2.1 % standard deviation, steps 3 to 15 %, deck 5 to 12 Hz, damping 0.05 to 0.15). Grading by the coefficient of variation over 8 to 20 s is published in kind
 * (Horton and Miller 2011); its edges, 1 % and 5 %, are assumed.
 */
export const REPORT: ParameterSet = {
  name: 'report',
  firstSeed: 10_000_001,
  grades: {
    calm: {
      variation: [0, 0.01],
      breathing: { share: [0.002, 0.005], perSecond: [0.2, 0.7] },
      shifting: { share: [0.001, 0.005], cornerHz: [0.3, 1] },
      bursts: { perSecond: [0.02, 0.08], more: [0.2, 0.5], share: [0.01, 0.04] },
      gateLean: 0.03,
      handler: 0.03,
      footOffPerSecond: 0.005,
    },
    restless: {
      variation: [0.01, 0.05],
      breathing: { share: [0.002, 0.005], perSecond: [0.2, 0.7] },
      shifting: { share: [0.003, 0.015], cornerHz: [0.3, 1] },
      bursts: { perSecond: [0.1, 0.5], more: [0.3, 0.6], share: [0.03, 0.12] },
      gateLean: 0.05,
      handler: 0.05,
      footOffPerSecond: 0.02,
    },
    violent: {
      variation: [0.05, 0.25],
      breathing: { share: [0.003, 0.006], perSecond: [0.3, 0.9] },
      shifting: { share: [0.007, 0.021], cornerHz: [0.3, 1] },
      bursts: { perSecond: [0.3, 1], more: [0.4, 0.75], share: [0.1, 0.35] },
      gateLean: 0.08,
      handler: 0.08,
      footOffPerSecond: 0.06,
    },
  },
  weightGrams: [3000, 120_000],
  divisions: [5, 10, 20, 50, 100],
  rates: [4, 10, 20, 30, 50],
  walkOn: [0.5, 1.5],
  legRise: [0.08, 0.25],
  halfOn: { chance: 0.03, lasts: [0.5, 3] },
  stands: [5, 15],
  earlyExit: { chance: 0.08, stands: [0.5, 4] },
  secondAnimal: { chance: 0.03, share: [0.1, 1.2] },
  resonance: { hz: [5, 12], damping: [0.05, 0.15] },
  lag: [0.1, 0.5],
  jitter: [0.02, 0.3],
  lost: 0.01,
};

/** What methods are tuned on: other seeds, and ranges that overlap those reported without being equal to them. */
export const TUNING: ParameterSet = {
  name: 'tuning',
  firstSeed: 1,
  grades: {
    calm: {
      variation: [0, 0.01],
      breathing: { share: [0.0015, 0.0045], perSecond: [0.25, 0.6] },
      shifting: { share: [0.0015, 0.006], cornerHz: [0.25, 0.9] },
      bursts: { perSecond: [0.03, 0.1], more: [0.3, 0.6], share: [0.01, 0.03] },
      gateLean: 0.04,
      handler: 0.04,
      footOffPerSecond: 0.008,
    },
    restless: {
      variation: [0.01, 0.05],
      breathing: { share: [0.002, 0.006], perSecond: [0.25, 0.6] },
      shifting: { share: [0.004, 0.013], cornerHz: [0.25, 0.9] },
      bursts: { perSecond: [0.15, 0.6], more: [0.2, 0.5], share: [0.04, 0.15] },
      gateLean: 0.06,
      handler: 0.06,
      footOffPerSecond: 0.025,
    },
    violent: {
      variation: [0.05, 0.25],
      breathing: { share: [0.002, 0.006], perSecond: [0.3, 0.8] },
      shifting: { share: [0.008, 0.018], cornerHz: [0.25, 0.9] },
      bursts: { perSecond: [0.4, 0.9], more: [0.5, 0.7], share: [0.08, 0.3] },
      gateLean: 0.1,
      handler: 0.1,
      footOffPerSecond: 0.08,
    },
  },
  weightGrams: [4000, 100_000],
  divisions: [5, 10, 20, 50, 100],
  rates: [4, 10, 20, 30, 50],
  walkOn: [0.6, 1.8],
  legRise: [0.06, 0.2],
  halfOn: { chance: 0.04, lasts: [0.4, 2.5] },
  stands: [5, 12],
  earlyExit: { chance: 0.1, stands: [0.7, 4] },
  secondAnimal: { chance: 0.04, share: [0.15, 1] },
  resonance: { hz: [5, 10], damping: [0.06, 0.15] },
  lag: [0.08, 0.45],
  jitter: [0.05, 0.35],
  lost: 0.015,
};
