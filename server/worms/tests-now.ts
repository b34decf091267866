import { medicineById } from '../../core/medicine/formulary.ts';
import { findingsOf, type TestFindings } from '../../core/reduction/findings.ts';
import { lastProven, type Proven } from '../../core/reduction/proven.ts';
import {
  progressOf,
  type ReductionTest,
  samplesOf,
  type TestProgress,
  type TestSample,
} from '../../core/reduction/reduction-test.ts';
import { type RetestDays, type RetestWindow, retestDays, retestWindow } from '../../core/reduction/retest.ts';
import type { FarmRecords } from '../barn/barn-context.ts';

/** A test with all that follows from its counts; only where it stands follows from the clock. */
export interface TestNow {
  readonly test: ReductionTest;
  readonly samples: readonly TestSample[];
  readonly window: RetestWindow;
  /** Milliseconds since 1970 of the last dose in it. */
  readonly treatedAtMs: number;
  readonly days: RetestDays;
  /** What its counts come to, worked out when it is first asked for. */
  readonly findings: () => TestFindings;
}

interface Kept {
  readonly of: readonly unknown[];
  readonly tests: readonly TestNow[];
}
const kept = new WeakMap<FarmRecords, Kept>();

/** Every test with its counts; worked out anew only where a test, a count or the day book has changed. */
export function testsNow(barn: FarmRecords): readonly TestNow[] {
  const { reductionTests, eggCounts, formulary } = barn.memory;
  const of = [reductionTests, eggCounts, formulary];
  const before = kept.get(barn);
  if (before?.of.every((part, i) => part === of[i]) === true) return before.tests;
  const tests = reductionTests.map((test) => testNow(test, barn));
  kept.set(barn, { of, tests });
  return tests;
}

function testNow(test: ReductionTest, { memory: { eggCounts, formulary }, store }: FarmRecords): TestNow {
  const samples = samplesOf(test, eggCounts);
  const doses = test.animals.flatMap(
    ({ treatmentId }) => store.dayBook.entry(treatmentId ?? '')?.treatment.givenAtMs ?? [],
  );
  const treatedAtMs = doses.length > 0 ? Math.max(...doses) : test.plannedAtMs;
  const window = retestWindow(medicineById(formulary, test.medicineId)?.group ?? null);
  let findings: TestFindings | null = null;
  return {
    test,
    samples,
    window,
    treatedAtMs,
    days: retestDays(window, treatedAtMs),
    findings: () => {
      findings ??= findingsOf(test, samples);
      return findings;
    },
  };
}

/** Where a test stands now. */
export function progressNow({ test, samples, days }: TestNow, wallMs: number): TestProgress {
  return progressOf(test, samples, days, wallMs);
}

/** What finished tests told of medicines, the newest of each medicine and species. */
export function provenNow(barn: FarmRecords): Proven[] {
  const { wallMs } = barn.clock.now();
  const done = testsNow(barn).filter((each) => progressNow(each, wallMs).step === 'done');
  return lastProven(
    done.flatMap(({ test, samples, treatedAtMs, findings }) => {
      const { result } = findings();
      if (!result.ok) return [];
      const { id: testId, medicineId, species } = test;
      const atMs = Math.max(treatedAtMs, ...samples.flatMap(({ after }) => after?.takenAtMs ?? []));
      return [{ testId, medicineId, species, verdict: result.verdict, reduction: result.reduction, atMs }];
    }),
  );
}
