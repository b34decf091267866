import type { Syringe } from '../dosing/syringe.ts';
import type { Mass } from '../quantity/mass.ts';
import type { Temperature } from '../quantity/temperature.ts';
import type { Volume } from '../quantity/volume.ts';
import type { SyringeFindings } from './syringe-findings.ts';

/** A finished check of a syringe, as it is kept. */
export interface SyringeCheckRecord {
  readonly id: string;
  readonly syringeId: string;
  readonly temperature: Temperature;
  readonly division: Mass;
  /** The masses weighed, in their order. */
  readonly delivered: readonly Mass[];
  /** Deliveries that were left out, because a hand slipped. */
  readonly leftOut: number;
  readonly findings: SyringeFindings;
  /** Milliseconds since 1970. */
  readonly atMs: number;
  readonly by: string;
  readonly clockTrusted: boolean;
}

/** What is settled once a syringe, its mark and the water were picked. */
export interface SyringeTask {
  readonly syringe: Syringe;
  readonly mark: Volume;
  readonly temperature: Temperature;
}

/** The check of one syringe, one step at a time; `since` is the uptime in milliseconds of the last step taken. */
export type SyringeCheck =
  | { readonly step: 'idle' }
  | { readonly step: 'cup'; readonly task: SyringeTask; readonly since: number }
  | {
      readonly step: 'deliver';
      readonly task: SyringeTask;
      readonly division: Mass;
      /** Whether the scale stood in net mode under the cup; it must stay so. */
      readonly net: boolean;
      /** What the scale showed before the delivery that comes next. */
      readonly last: Mass;
      readonly delivered: readonly Mass[];
      readonly leftOut: number;
      readonly since: number;
    }
  | { readonly step: 'result'; readonly record: SyringeCheckRecord };

/** What happens to a check; all but the last two come from people. */
export type SyringeCheckEvent =
  | {
      readonly type: 'start';
      readonly syringeId: string;
      readonly markMl: number;
      readonly celsius: number;
    }
  | { readonly type: 'next' }
  | { readonly type: 'leave-out' }
  | { readonly type: 'cancel' }
  | { readonly type: 'link-lost' }
  | { readonly type: 'tick' };

/** Why an intent was refused; nothing changed. */
export type SyringeCheckRefusal =
  | 'wrong-state'
  | 'no-such-syringe'
  | 'no-such-mark'
  | 'temperature-out-of-range'
  | 'bench-not-ready'
  | 'bench-moving'
  | 'tared-mid-way'
  | 'too-coarse-for-syringe'
  | 'nothing-delivered'
  | 'more-than-one-delivery';

/** What the shell around the reducer must do. */
export type SyringeCheckEffect = { readonly do: 'store-check'; readonly record: SyringeCheckRecord };

/** What a step of the check comes to. */
export interface SyringeCheckOutcome {
  readonly check: SyringeCheck;
  readonly effects: readonly SyringeCheckEffect[];
  readonly refused: SyringeCheckRefusal | null;
}
