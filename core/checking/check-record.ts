import type { Mass } from '../quantity/mass.ts';
import type { ScaleRole } from '../weighing/reading.ts';
import type { KnownWeight } from './known-weight.ts';

/** The corners of a platform in the order they are tried, seen from where the keeper stands. */
export const CORNERS = ['front-left', 'front-right', 'back-right', 'back-left'] as const;
/** One of {@link CORNERS}. */
export type Corner = (typeof CORNERS)[number];

/** Where in the check a reading was taken; `returned` is empty again, `down` is after a second weight came off. */
export type CheckSpot = 'zero' | 'bottle' | 'middle' | 'returned' | Corner | 'both' | 'down';

/** What the scale showed at one spot, at rest. */
export interface SpotReading {
  readonly spot: CheckSpot;
  readonly shown: Mass;
}

/** A reading held against what it should have been, in divisions of the scale. */
export interface CheckPoint {
  readonly spot: CheckSpot;
  readonly known: Mass;
  readonly shown: Mass;
  /** Shown less known; positive is too much. */
  readonly error: number;
  /** The most it may be, either way: the tolerance and the doubt of the weight. */
  readonly limit: number;
}

/** How far apart the four corners read, in divisions, and how far they may. */
export interface CornerSpread {
  readonly spread: number;
  readonly limit: number;
}

/** What came of a check. */
export interface CheckFindings {
  readonly points: readonly CheckPoint[];
  /** `null` where corners were not tried. */
  readonly corners: CornerSpread | null;
  /** The weight was known too loosely to hold the scale to its tolerance: a pass says less. */
  readonly rough: boolean;
  readonly verdict: 'passed' | 'failed';
}

/** A check that was finished, as it is kept. */
export interface ScaleCheckRecord extends CheckFindings {
  readonly id: string;
  readonly role: ScaleRole;
  readonly division: Mass;
  readonly weight: KnownWeight;
  /** The second weight of the way up and down; `null` where that was skipped. */
  readonly second: KnownWeight | null;
  /** Every reading of the check in its order. */
  readonly readings: readonly SpotReading[];
  /** Milliseconds since 1970. */
  readonly atMs: number;
  readonly by: string;
  readonly clockTrusted: boolean;
}
