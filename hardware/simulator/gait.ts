/** How an animal behaves on the deck; graded by the spread of its weight signal, as in an activity score. */
export type AnimalGrade = 'calm' | 'restless' | 'violent';

/** Bounds of what is drawn for one animal: the low and the high end, both included. */
export type Range = readonly [low: number, high: number];

/** The motion of one grade. Amplitudes are shares of body weight, rates are per second. */
export interface Gait {
  readonly breathing: { readonly perSecond: Range; readonly share: Range };
  /** Slow swaying from side to side and fore and aft. */
  readonly swaying: { readonly perSecond: Range; readonly share: Range };
  /** Steps in place: `chance` for each second to hold a burst. */
  readonly stepping: { readonly chance: number; readonly perSecond: Range; readonly share: Range };
  /** A foot beside the deck: `chance` for each second, and the share of weight then missing. */
  readonly footOff: { readonly chance: number; readonly share: Range };
}

/**
 * Assumed, all of it: no source gives spectra of a standing animal (facts §4). Only the grading is published in
 * kind (activity as the coefficient of variation of weight over 8 to 20 s); its edges, calm below 1 %, restless to
 * 5 %, violent above, are assumed as well.
 */
export const GAITS: Readonly<Record<AnimalGrade, Gait>> = {
  calm: {
    breathing: { perSecond: [0.2, 0.5], share: [0.002, 0.003] },
    swaying: { perSecond: [0.3, 0.6], share: [0.002, 0.005] },
    stepping: { chance: 0.03, perSecond: [1, 2], share: [0.01, 0.03] },
    footOff: { chance: 0, share: [0.1, 0.1] },
  },
  restless: {
    breathing: { perSecond: [0.3, 0.7], share: [0.002, 0.005] },
    swaying: { perSecond: [0.3, 1], share: [0.01, 0.025] },
    stepping: { chance: 0.3, perSecond: [1, 3], share: [0.03, 0.08] },
    footOff: { chance: 0, share: [0.1, 0.1] },
  },
  violent: {
    breathing: { perSecond: [0.4, 0.7], share: [0.003, 0.005] },
    swaying: { perSecond: [0.5, 1], share: [0.02, 0.03] },
    stepping: { chance: 0.85, perSecond: [1.5, 3], share: [0.1, 0.25] },
    footOff: { chance: 0.12, share: [0.1, 0.5] },
  },
};

/** How long walking on or off takes, in milliseconds. Assumed. */
export const WALK_MS: Range = [500, 1500];
/** How long a leg takes to take up or give up its load, in milliseconds. Assumed. */
export const LEG_MS = 150;
/** What each leg carries, fore legs first. Assumed: a little more than half of the weight stands in front. */
export const LEG_SHARES = [0.29, 0.29, 0.21, 0.21] as const;
/** When each leg lands, as a part of the walk. Assumed. */
export const LEG_LANDS = [0, 0.25, 0.65, 1] as const;
/** How long a burst of steps or a foot beside the deck lasts, in seconds. Assumed. */
export const BURST_SECONDS: Range = [0.2, 0.6];
