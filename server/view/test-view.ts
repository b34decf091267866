import { medicineById } from '../../core/medicine/formulary.ts';
import { efficacyBand } from '../../core/reduction/combination.ts';
import { confoundersOf } from '../../core/reduction/confounders.ts';
import type { TestFindings } from '../../core/reduction/findings.ts';
import { isDue, isOpen } from '../../core/reduction/reduction-test.ts';
import { type EggCount, groupMean } from '../../core/worms/egg-count.ts';
import type {
  TestPage,
  TestResultView,
  TestRowView,
  TestsView,
  WormCheckView,
} from '../../shared/reduction-test.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import { dosedRounds } from '../worms/plan-now.ts';
import { testDoses } from '../worms/test-doses.ts';
import { progressNow, provenNow, type TestNow, testsNow } from '../worms/tests-now.ts';
import { rfc3339 } from './times.ts';
import { togetherViews } from './together-view.ts';

/** The order of the list: what wants something first. */
const ORDER: Readonly<Record<TestRowView['step'], number>> = {
  overdue: 0,
  due: 1,
  before: 2,
  waiting: 3,
  done: 4,
  'given-up': 5,
};

/** The reduction tests, those that want something first, then the newest. */
export function testsView(barn: BarnContext): TestsView {
  const { wallMs } = barn.clock.now();
  const rows = testsNow(barn).map((each) => rowView(each, barn));
  return {
    tests: rows.sort((a, b) => ORDER[a.step] - ORDER[b.step] || b.treatedAt.localeCompare(a.treatedAt)),
    together: togetherViews(barn),
    canPlan: dosedRounds(barn, wallMs).some(({ treated }) => treated.length >= 2),
  };
}

/** What the state tells of the worm check. */
export function wormCheckView(barn: BarnContext): WormCheckView {
  const { memory, clock } = barn;
  const { wallMs } = clock.now();
  const steps = testsNow(barn).map((each) => progressNow(each, wallMs));
  return {
    revision: memory.wormRevision,
    open: steps.filter(isOpen).length,
    due: steps.filter(isDue).length,
    failed: provenNow(barn).flatMap(({ testId, medicineId, species, verdict, reduction, atMs }) => {
      if (verdict !== 'resistant' && verdict !== 'low-resistant') return [];
      const active = medicineById(memory.formulary, medicineId)?.active ?? medicineId;
      return [{ testId, active, species, verdict, reduction, at: rfc3339(atMs) }];
    }),
  };
}

function rowView(now: TestNow, { memory, clock }: BarnContext): TestRowView {
  const { test, treatedAtMs, days, findings } = now;
  const { step, missing } = progressNow(now, clock.now().wallMs);
  const medicine = medicineById(memory.formulary, test.medicineId);
  const result = step === 'done' ? findings().result : null;
  return {
    id: test.id,
    medicine: medicine?.name ?? test.medicineId,
    active: medicine?.active ?? test.medicineId,
    species: test.species,
    design: test.design,
    step,
    treatedAt: rfc3339(treatedAtMs),
    dueFrom: rfc3339(days.fromMs),
    dueBest: rfc3339(days.bestMs),
    dueUntil: rfc3339(days.untilMs),
    missing: { before: missing.before.length, after: missing.after.length },
    verdict: result?.ok === true ? result.verdict : null,
    reduction: result?.ok === true ? result.reduction : null,
  };
}

/** One test with all that is known of it; `null` for an unknown id. */
export function testPage(barn: BarnContext, id: string): TestPage | null {
  const now = testsNow(barn).find(({ test }) => test.id === id);
  if (now === undefined) return null;
  const { test, samples, window } = now;
  const { memory } = barn;
  const names = new Map([...memory.gone, ...memory.animals].map((animal) => [animal.id, animal.name]));
  const found = now.findings();
  const early =
    !found.result.ok &&
    found.result.why === 'too-few-animals' &&
    isOpen(progressNow(now, barn.clock.now().wallMs));
  return {
    ...rowView(now, barn),
    protocol: test.protocol,
    method: test.method,
    window: {
      fromDay: window.fromDay,
      untilDay: window.untilDay,
      evidence: window.evidence,
      source: window.source,
    },
    plannedAt: rfc3339(test.plannedAtMs),
    by: test.by,
    animals: samples.map(({ animalId, treatmentId, before, after }) => ({
      id: animalId,
      name: names.get(animalId) ?? '',
      treated: treatmentId !== null,
      before: before?.eggs ?? null,
      after: after?.eggs ?? null,
    })),
    result: early ? null : resultView(now, found),
    dropped: found.dropped,
    untreatedFell: found.untreatedFell,
    controlled: found.controlled,
    confounders: confoundersOf({
      doses: testDoses(barn, now),
      window,
      eggsBefore: found.result.ok ? found.result.eggs.before : 0,
      // Treated and untreated sampled on the same day: what the untreated fell by is taken off already.
      untreatedFell: test.design === 'unpaired' ? 0 : found.untreatedFell,
      generaTold: false,
    }),
    ended: test.end === null ? null : { how: test.end.how, at: rfc3339(test.end.atMs), by: test.end.by },
  };
}

function resultView(now: TestNow, { result }: TestFindings): TestResultView {
  if (!result.ok) return result;
  const { verdict, by, reduction, limits, chances, thresholds, animals, eggs, extremeCare, fewEggs } = result;
  const { before, after } = judgedCounts(now);
  return {
    ok: true,
    verdict,
    by,
    reduction,
    limits: { ...limits },
    chances: chances === null ? null : { ...chances },
    thresholds: { ...thresholds },
    animals: { ...animals },
    eggs: { ...eggs },
    means: { before: meanView(before), after: meanView(after) },
    extremeCare,
    fewEggs,
    band: efficacyBand(reduction),
  };
}

/** The counts that were held against each other. */
function judgedCounts({ test, samples }: TestNow): { before: EggCount[]; after: EggCount[] } {
  const treated = samples.filter(({ treatmentId }) => treatmentId !== null);
  if (test.design === 'unpaired') {
    const untreated = samples.filter(({ treatmentId }) => treatmentId === null);
    return {
      before: untreated.flatMap(({ after }) => after ?? []),
      after: treated.flatMap(({ after }) => after ?? []),
    };
  }
  const whole = treated.flatMap(({ before, after }) =>
    before === null || after === null ? [] : [{ before, after }],
  );
  return { before: whole.map(({ before }) => before), after: whole.map(({ after }) => after) };
}

function meanView(counts: readonly EggCount[]): { value: number; low: number; high: number } {
  const mean = groupMean(counts);
  if (mean === null) return { value: 0, low: 0, high: 0 };
  return { value: mean.eggsPerGram, low: mean.counting.lower, high: mean.counting.upper };
}
