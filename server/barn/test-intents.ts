import type { ReductionTest } from '../../core/reduction/reduction-test.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import { dosedRounds } from '../worms/plan-now.ts';
import { progressNow, provenNow, testsNow } from '../worms/tests-now.ts';
import type { BarnContext } from './barn-context.ts';
import type { Memory } from './memory.ts';
import { runRound } from './run-round.ts';

type Of<T extends Intent['type']> = Extract<Intent, { type: T }>;

/** Plans a test of what was dosed in the last day. */
export function planTest(barn: BarnContext, intent: Of<'plan-test'>): Refusal | null {
  const { memory, store } = barn;
  const wallMs = Math.round(barn.clock.now().wallMs);
  const { medicineId, species, design, protocol, method } = intent;
  const treated = [...new Set(intent.treated)];
  const untreated = [...new Set(intent.untreated)].filter((id) => !treated.includes(id));
  const round = dosedRounds(barn, wallMs).find(
    (each) => each.medicineId === medicineId && each.species === species,
  );
  const rows = treated.map((id) => round?.treated.find(({ animalId }) => animalId === id));
  const known = rows.flatMap((row) => row ?? []);
  if (known.length < treated.length || treated.length < 2) return 'not-whole-dose';
  if (
    untreated.some((id) => !memory.animals.some((animal) => animal.id === id && animal.species === species))
  )
    return 'no-such-animal';
  if (design === 'unpaired' && untreated.length < 2) return 'needs-untreated';
  const test: ReductionTest = {
    id: barn.newId(),
    medicineId,
    species,
    design,
    protocol,
    method,
    animals: [...known, ...untreated.map((animalId) => ({ animalId, treatmentId: null }))],
    plannedAtMs: wallMs,
    by: memory.settings.person,
    end: null,
  };
  store.reductionTests.add(test);
  return changeWormCheck(barn, { reductionTests: [...memory.reductionTests, test] });
}

/** Ends a test by the keeper's word. */
export function endTest(barn: BarnContext, { testId, how }: Of<'end-test'>): Refusal | null {
  const { memory, store } = barn;
  const atMs = Math.round(barn.clock.now().wallMs);
  const now = testsNow(barn).find(({ test }) => test.id === testId);
  if (now === undefined) return 'no-such-test';
  const { step } = progressNow(now, atMs);
  if (step === 'done' || step === 'given-up') return 'test-ended';
  const end = { how, atMs, by: memory.settings.person };
  store.reductionTests.end(testId, end);
  return changeWormCheck(barn, {
    reductionTests: memory.reductionTests.map((test) => (test.id === testId ? { ...test, end } : test)),
  });
}

/** Changes counts or tests in memory; a dose on offer is judged anew where that changes what a test tells of a medicine. */
export function changeWormCheck(
  barn: BarnContext,
  change: Partial<Pick<Memory, 'eggCounts' | 'reductionTests'>>,
): null {
  const before = JSON.stringify(provenNow(barn));
  barn.memory = { ...barn.memory, ...change, wormRevision: barn.memory.wormRevision + 1 };
  if (JSON.stringify(provenNow(barn)) !== before) runRound(barn, { type: 'world-changed', what: 'rules' });
  return null;
}
