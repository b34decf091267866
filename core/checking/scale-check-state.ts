import type { Mass } from '../quantity/mass.ts';
import type { ScaleRole } from '../weighing/reading.ts';
import type { Corner, ScaleCheckRecord, SpotReading } from './check-record.ts';
import type { KnownWeight } from './known-weight.ts';

/** What is settled once a weight was picked. */
export interface Underway {
  readonly role: ScaleRole;
  readonly division: Mass;
  readonly weight: KnownWeight;
  readonly readings: readonly SpotReading[];
}

/** The check of one scale, one step at a time; `since` is the uptime in milliseconds of the last step taken. */
export type ScaleCheck =
  | { readonly step: 'idle' }
  | {
      readonly step: 'zero';
      readonly role: ScaleRole;
      /** Whether the scale went away in the middle, so that all begins again. */
      readonly restarted: boolean;
      readonly since: number;
    }
  | {
      readonly step: 'weight';
      readonly role: ScaleRole;
      readonly division: Mass;
      readonly readings: readonly SpotReading[];
      readonly since: number;
    }
  | { readonly step: 'bottle'; readonly run: Underway; readonly since: number }
  | { readonly step: 'middle'; readonly run: Underway; readonly since: number }
  | { readonly step: 'off'; readonly run: Underway; readonly since: number }
  | { readonly step: 'corner'; readonly run: Underway; readonly corner: Corner; readonly since: number }
  | { readonly step: 'second'; readonly run: Underway; readonly since: number }
  | { readonly step: 'both'; readonly run: Underway; readonly second: KnownWeight; readonly since: number }
  | { readonly step: 'down'; readonly run: Underway; readonly second: KnownWeight; readonly since: number }
  | { readonly step: 'result'; readonly record: ScaleCheckRecord };

/** The step names, in the order of the work. */
export type ScaleCheckStep = ScaleCheck['step'];

/** What happens to a check; the first group comes from people. */
export type ScaleCheckEvent =
  | { readonly type: 'start'; readonly role: ScaleRole }
  | { readonly type: 'weight'; readonly weightId: string }
  | { readonly type: 'next' }
  | { readonly type: 'skip' }
  | { readonly type: 'cancel' }
  | { readonly type: 'link-lost'; readonly role: ScaleRole }
  | { readonly type: 'tick' };

/** Why an intent was refused; nothing changed. */
export type ScaleCheckRefusal =
  | 'wrong-state'
  | 'no-such-weight'
  | 'weight-too-light'
  | 'scale-not-ready'
  | 'scale-moving'
  | 'scale-tared'
  | 'not-at-zero'
  | 'nothing-on-scale'
  | 'weight-still-on';

/** What the shell around the reducer must do. */
export type ScaleCheckEffect = { readonly do: 'store-check'; readonly record: ScaleCheckRecord };

/** What a step of the check comes to. */
export interface ScaleCheckOutcome {
  readonly check: ScaleCheck;
  readonly effects: readonly ScaleCheckEffect[];
  readonly refused: ScaleCheckRefusal | null;
}

/** The scale a check has in hand now, or `null`: meanwhile it serves for nothing else. */
export function scaleInCheck(check: ScaleCheck): ScaleRole | null {
  switch (check.step) {
    case 'idle':
    case 'result':
      return null;
    case 'zero':
    case 'weight':
      return check.role;
    default:
      return check.run.role;
  }
}
