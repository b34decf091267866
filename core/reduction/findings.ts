import { mean } from '../statistics/moments.ts';
import { type EggCount, eggsPerGram } from '../worms/egg-count.ts';
import { controlledReductions } from './control-group.ts';
import { type CountsResult, pairedCounts, unpairedCounts } from './counts.ts';
import { type JudgeResult, judgeReduction } from './judge.ts';
import type { ReductionTest, TestSample } from './reduction-test.ts';

/** What the counts of a test come to. */
export interface TestFindings {
  readonly result: JudgeResult;
  /** Treated animals left out since one of their two samples is missing. */
  readonly dropped: number;
  /** What the untreated fell by between the two samplings, as a fraction; `null` where none were sampled twice. */
  readonly untreatedFell: number | null;
  /** The reduction with what the untreated fell by taken off; `null` as `untreatedFell`. */
  readonly controlled: number | null;
}

/** Judges the counts of a test as they stand. */
export function findingsOf(
  test: Pick<ReductionTest, 'design' | 'species' | 'protocol'>,
  samples: readonly TestSample[],
): TestFindings {
  const treated = samples.filter(({ treatmentId }) => treatmentId !== null);
  const untreated = samples.filter(({ treatmentId }) => treatmentId === null);
  const made = countsOf(test, treated, untreated);
  const result = made.ok ? judgeReduction(made.counts, test.species, test.protocol) : made;
  return {
    result,
    dropped: made.ok ? made.dropped : 0,
    ...(test.design === 'paired'
      ? heldAgainst(untreated, treated)
      : { untreatedFell: null, controlled: null }),
  };
}

function countsOf(
  { design }: Pick<ReductionTest, 'design'>,
  treated: readonly TestSample[],
  untreated: readonly TestSample[],
): CountsResult {
  if (design === 'paired') return pairedCounts(treated);
  const after = (samples: readonly TestSample[]): EggCount[] =>
    samples.flatMap(({ after: count }) => count ?? []);
  return unpairedCounts(after(untreated), after(treated));
}

function heldAgainst(
  untreated: readonly TestSample[],
  treated: readonly TestSample[],
): Pick<TestFindings, 'untreatedFell' | 'controlled'> {
  const [left, dosed] = [meansOf(untreated), meansOf(treated)];
  if (left === null || dosed === null || left.before === 0) return { untreatedFell: null, controlled: null };
  const { againstBoth } = controlledReductions({
    treatedBefore: dosed.before,
    treatedAfter: dosed.after,
    untreatedBefore: left.before,
    untreatedAfter: left.after,
  });
  return { untreatedFell: 1 - left.after / left.before, controlled: againstBoth };
}

/** Mean eggs per gram of the animals sampled twice; `null` where there are none. */
function meansOf(samples: readonly TestSample[]): { before: number; after: number } | null {
  const twice = samples.flatMap(({ before, after }) =>
    before === null || after === null ? [] : [{ before: eggsPerGram(before), after: eggsPerGram(after) }],
  );
  if (twice.length === 0) return null;
  return { before: mean(twice.map(({ before }) => before)), after: mean(twice.map(({ after }) => after)) };
}
