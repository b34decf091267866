import { mergeAnimals } from '../../core/herd/merge.ts';
import { partAnimals } from '../../core/herd/part.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { BothRecords } from '../store/animals.ts';
import type { BarnContext } from './barn-context.ts';
import { herdOnDisk, type Memory } from './memory.ts';
import { runRound } from './run-round.ts';

type Of<T extends Intent['type']> = Extract<Intent, { type: T }>;

const WHY = {
  'same-record': 'not-one-animal',
  'other-species': 'not-one-animal',
  undecided: 'merge-undecided',
  gone: 'animal-gone',
  'not-merged': 'not-merged',
  'name-in-use': 'name-in-use',
  'worn-by-another': 'tag-in-use',
} as const satisfies Record<string, Refusal>;

/** Reads two records as one animal from now on. */
export function mergeRecords(
  barn: BarnContext,
  { keptId, goneId, choices }: Of<'merge-animals'>,
): Refusal | null {
  const { memory, clock } = barn;
  const [kept, gone] = [keptId, goneId].map((id) => memory.animals.find((animal) => animal.id === id));
  if (kept === undefined || gone === undefined) {
    const left = memory.gone.some(({ id }) => id === keptId || id === goneId);
    return left ? 'animal-gone' : 'no-such-animal';
  }
  if (inRound(memory, [keptId, goneId])) return 'in-round';
  const bothTested = memory.reductionTests.some(({ animals }) =>
    [keptId, goneId].every((id) => animals.some(({ animalId }) => animalId === id)),
  );
  if (bothTested) return 'both-in-test';
  const { person } = memory.settings;
  const after = mergeAnimals(kept, gone, choices, Math.round(clock.now().wallMs), person);
  if (!after.ok) return WHY[after.why];
  keepRecords(barn, 'merged', { kept, gone }, after);
  return null;
}

/** Reads two records that were merged as two animals again. */
export function partRecords(barn: BarnContext, { goneId }: Of<'part-animals'>): Refusal | null {
  const { memory, store } = barn;
  const gone = memory.gone.find(({ id }) => id === goneId);
  if (gone === undefined)
    return memory.animals.some(({ id }) => id === goneId) ? 'not-merged' : 'no-such-animal';
  if (gone.life.kind !== 'merged') return 'not-merged';
  const { intoId } = gone.life;
  const kept = memory.animals.find(({ id }) => id === intoId);
  if (kept === undefined) return 'animal-gone';
  if (inRound(memory, [intoId])) return 'in-round';
  const was = store.animals.mergeOf(goneId, kept);
  if (was === null) return 'not-merged';
  const after = partAnimals(kept, gone, was, memory.animals);
  if (!after.ok) return WHY[after.why];
  keepRecords(barn, 'parted', { kept, gone }, after);
  return null;
}

/** Whether one of the animals is at the platform, or a dose made for it still waits for an answer. */
function inRound({ round }: Memory, ids: readonly string[]): boolean {
  const { phase, unanswered } = round;
  const who = 'visit' in phase ? phase.visit?.who?.animalId : undefined;
  return ids.some((id) => id === who || unanswered.some(({ animal }) => animal.id === id));
}

function keepRecords(
  barn: BarnContext,
  kind: 'merged' | 'parted',
  before: BothRecords,
  after: BothRecords,
): void {
  const { memory, store, clock } = barn;
  store.animals.keepMerge(kind, before, after, Math.round(clock.now().wallMs), memory.settings.person);
  // Whichever record the lines stand under so far; they are all of the one animal, or go back to their own.
  store.dayBook.refile(kind === 'merged' ? before.gone.id : before.kept.id);
  barn.memory = {
    ...memory,
    ...herdOnDisk(store),
    herdRevision: memory.herdRevision + 1,
    wormRevision: memory.wormRevision + 1,
  };
  runRound(barn, { type: 'world-changed', what: 'rules' });
}
