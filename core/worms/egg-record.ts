import { factorOf, methodWords, type SampleMethod } from './counting-methods.ts';
import type { EggCount } from './egg-count.ts';

/** Why a sample was counted: how the herd stands, one animal that looks ill, one bought in, or a reduction test. */
export type SamplePurpose = 'herd' | 'ill' | 'bought-in' | 'test';

/** Which of the two samplings of a reduction test a sample belongs to. */
export type TestStage = 'before' | 'after';

/** One sample as it was logged; never edited, see `EggCorrection`. */
export interface EggRecord {
  readonly id: string;
  /** Whose dung it is: one animal, or all of a composite. */
  readonly animalIds: readonly string[];
  /** Raw eggs counted. */
  readonly eggs: number;
  readonly method: SampleMethod;
  readonly purpose: SamplePurpose;
  /** `null` unless it was counted for a reduction test. */
  readonly test: { readonly id: string; readonly stage: TestStage } | null;
  /** Milliseconds since 1970 of the day the dung was taken, and of the entry. */
  readonly takenAtMs: number;
  readonly loggedAtMs: number;
  readonly by: string;
}

/** A later statement about a sample; it stands beside the record. */
export interface EggCorrection {
  readonly id: string;
  readonly countId: string;
  readonly what: { readonly kind: 'taken-back' } | { readonly kind: 'other-number'; readonly eggs: number };
  readonly atMs: number;
  readonly by: string;
}

/** A record with the corrections beside it, oldest first. */
export interface EggEntry {
  readonly record: EggRecord;
  readonly corrections: readonly EggCorrection[];
}

/** Puts each correction beside its record; both lists stay in the order given. */
export function pairCounts(records: readonly EggRecord[], corrections: readonly EggCorrection[]): EggEntry[] {
  return records.map((record) => ({
    record,
    corrections: corrections.filter(({ countId }) => countId === record.id),
  }));
}

/** What a sample says once its corrections are read; `null` where it was taken back. */
export function countNow({ record, corrections }: EggEntry): EggCount | null {
  if (corrections.some(({ what }) => what.kind === 'taken-back')) return null;
  const other = corrections.findLast(({ what }) => what.kind === 'other-number')?.what;
  return {
    eggs: other?.kind === 'other-number' ? other.eggs : record.eggs,
    factor: factorOf(record.method),
    method: methodWords(record.method),
    animals: record.animalIds.length,
    takenAtMs: record.takenAtMs,
  };
}
