import { BASELINES } from './baselines/all.ts';
import { firstTaken, type Method, type Setting } from './baselines/method.ts';
import { type Estimated, estimate } from './estimator.ts';
import { GRADES, REPORT, TUNING } from './parameters.ts';
import type { Outcome, PastVisit } from './score.ts';
import { tune } from './tune.ts';
import { makeVisit } from './visit.ts';

/** One visit, and what the estimator made of it. */
export interface EstimatedVisit {
  readonly visit: PastVisit;
  readonly estimated: Estimated;
}

/** Everything one run of the bench found out. */
export interface DeckRun {
  readonly ours: readonly EstimatedVisit[];
  /** The first holds of the estimator where half the usual uncertainty is asked for. */
  readonly oursAtHalf: readonly Outcome[];
  readonly baselines: readonly {
    readonly method: Method;
    readonly setting: Setting;
    readonly outcomes: readonly Outcome[];
  }[];
}

/** Tunes the baselines on the tuning set, then lets every method see the same visits of the report set. */
export function runDeck(visitsPerGrade: number, tuningPerGrade: number): DeckRun {
  const tuning = GRADES.flatMap((grade, g) =>
    Array.from({ length: tuningPerGrade }, (_, i) =>
      makeVisit(TUNING, grade, TUNING.firstSeed + g * tuningPerGrade + i),
    ),
  );
  const baselines = BASELINES.map((method) => ({
    method,
    setting: tune(method, tuning),
    outcomes: [] as Outcome[],
  }));
  const ours: EstimatedVisit[] = [];
  const oursAtHalf: Outcome[] = [];
  for (const [g, grade] of GRADES.entries()) {
    for (let i = 0; i < visitsPerGrade; i += 1) {
      const made = makeVisit(REPORT, grade, REPORT.firstSeed + g * visitsPerGrade + i);
      const { samples, ...visit } = made;
      const estimated = estimate(made);
      ours.push({ visit, estimated });
      oursAtHalf.push({ visit, taken: estimated.atHalf });
      for (const { method, setting, outcomes } of baselines)
        outcomes.push({ visit, taken: firstTaken(method, setting, samples, made.division) });
    }
  }
  return { ours, oursAtHalf, baselines };
}

/** The first hold of the estimator in a visit, as the baselines' are kept. */
export function firstOutcome({ visit, estimated: { first } }: EstimatedVisit): Outcome {
  return { visit, taken: first === null ? null : { grams: first.mass.value, at: first.at } };
}
