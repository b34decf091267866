import type { Mass } from '../quantity/mass.ts';
import { maintenanceTolerance } from './tolerance.ts';

/** What a scale says is wrong, in one word each. */
export type ScaleFault =
  | 'over'
  | 'under'
  | 'zero-error'
  | 'tare-error'
  | 'not-displayed'
  | 'unstable-timeout';

/** Which scale a reading came from: the platform an animal stands on, or the bench a jug stands on. */
export type ScaleRole = 'platform' | 'bench';

/** One decoded frame of a scale, whatever format it came in. */
export interface Reading {
  readonly role: ScaleRole;
  /** What the scale shows; with a fault it must not be used. */
  readonly mass: Mass;
  /** The step between two values the scale can show, as far as the frame's decimals tell. */
  readonly division: Mass;
  readonly stability: 'stable' | 'moving';
  /** True when a tare has been taken off: such a reading never doses an animal. */
  readonly net: boolean;
  /** True when the scale itself says it stands at the centre of zero. */
  readonly zero: boolean;
  readonly fault?: ScaleFault;
  /** When it arrived, in milliseconds of uptime. */
  readonly at: number;
}

/** What is known of a scale: the most it carries and the step it shows. */
export interface ScaleSpec {
  readonly capacity: Mass;
  /** `null` until set or learned from the frames. */
  readonly division: Mass | null;
}

/**
 * The standard uncertainty of a weight at rest, in grams, from the scale alone: its error limit taken as rectangular
 * (JCGM 100, 4.3.7).
 */
export function scaleUncertainty(mass: Mass, division: Mass): Mass {
  return { unit: 'g', value: maintenanceTolerance(mass, division).value / Math.sqrt(3) };
}
