import type { Species } from '../herd/animal.ts';
import type { SampleMethod } from '../worms/counting-methods.ts';
import type { EggCount } from '../worms/egg-count.ts';
import { countNow, type EggEntry, type TestStage } from '../worms/egg-record.ts';
import type { Design } from './counts.ts';
import type { RetestDays } from './retest.ts';
import type { Protocol } from './thresholds.ts';

/** An animal of a test: one that had the medicine, by its row of the day book, or one left without. */
export interface TestAnimal {
  readonly animalId: string;
  /** `null` for an untreated one. */
  readonly treatmentId: string | null;
}

/** A planned test of one medicine in one species; never edited. */
export interface ReductionTest {
  readonly id: string;
  readonly medicineId: string;
  readonly species: Species;
  /**
   * Paired: the same animals before and after; untreated ones may be sampled beside them. Unpaired: the treated against
   * the untreated, both sampled once, after the dose.
   */
  readonly design: Design;
  readonly protocol: Protocol;
  /** How it was planned that samples are counted. */
  readonly method: SampleMethod;
  readonly animals: readonly TestAnimal[];
  readonly plannedAtMs: number;
  readonly by: string;
  /** Ended by the keeper's word with samples missing, or given up; `null` while it runs, and where it is complete. */
  readonly end: { readonly how: 'judged' | 'given-up'; readonly atMs: number; readonly by: string } | null;
}

/** What was counted of one animal of a test. */
export interface TestSample extends TestAnimal {
  readonly before: EggCount | null;
  readonly after: EggCount | null;
}

/** Where a test stands. */
export type TestStep = 'before' | 'waiting' | 'due' | 'overdue' | 'done' | 'given-up';

/** Where a test stands, and of whom which count is missing. */
export interface TestProgress {
  readonly step: TestStep;
  readonly missing: Readonly<Record<TestStage, readonly string[]>>;
}

/** Whether a test samples its animals at a stage. */
export function samplesAt({ design }: Pick<ReductionTest, 'design'>, stage: TestStage): boolean {
  return stage === 'after' || design === 'paired';
}

/** The samples of a test, an animal a row; of one counted twice at a stage the later count. */
export function samplesOf(test: ReductionTest, entries: readonly EggEntry[]): TestSample[] {
  const own = entries.filter(({ record }) => record.test?.id === test.id);
  const find = (animalId: string, stage: TestStage): EggCount | null => {
    const of = own.filter(
      ({ record }) => record.test?.stage === stage && record.animalIds.includes(animalId),
    );
    return of.flatMap((entry) => countNow(entry) ?? []).at(-1) ?? null;
  };
  return test.animals.map((animal) => ({
    ...animal,
    before: find(animal.animalId, 'before'),
    after: find(animal.animalId, 'after'),
  }));
}

/** Fewer animals of a group make no test. */
const LEAST_ANIMALS = 2;

/** How far a test has come by now. An animal without its first count of two is not asked for its second. */
export function progressOf(
  test: Pick<ReductionTest, 'design' | 'end'>,
  samples: readonly TestSample[],
  { fromMs, untilMs }: Pick<RetestDays, 'fromMs' | 'untilMs'>,
  wallMs: number,
): TestProgress {
  const twice = samplesAt(test, 'before');
  const ids = (of: readonly TestSample[]): string[] => of.map(({ animalId }) => animalId);
  const missing = {
    before: twice ? ids(samples.filter(({ before }) => before === null)) : [],
    after: ids(samples.filter(({ before, after }) => after === null && (before !== null || !twice))),
  };
  const whole = samples.filter(
    ({ before, after, treatmentId }) => treatmentId !== null && after !== null && (before !== null || !twice),
  );
  const stepNow = (): TestStep => {
    if (test.end !== null) return test.end.how === 'judged' ? 'done' : 'given-up';
    const isDay = wallMs >= fromMs;
    if (missing.after.length === 0 && whole.length >= LEAST_ANIMALS && (isDay || missing.before.length === 0))
      return 'done';
    if (isDay && missing.after.length > 0) return wallMs > untilMs ? 'overdue' : 'due';
    return missing.before.length > 0 ? 'before' : 'waiting';
  };
  return { step: stepNow(), missing };
}

/** Whether a test wants something of the keeper now. */
export function isDue({ step }: TestProgress): boolean {
  return step === 'before' || step === 'due' || step === 'overdue';
}

/** Whether a test has not come to its end. */
export function isOpen({ step }: TestProgress): boolean {
  return step !== 'done' && step !== 'given-up';
}
