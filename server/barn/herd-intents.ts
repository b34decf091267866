import { type AnimalEdit, editAnimal } from '../../core/herd/edit.ts';
import type { HerdAnimal } from '../../core/herd/herd-animal.ts';
import { leaveHerd } from '../../core/herd/leave.ts';
import { replaceTag, replaceVisualTag } from '../../core/herd/retag.ts';
import { bodyConditionFrom, eyelidFrom, soilingFrom } from '../../core/worms/scores.ts';
import { hasEyelidScore } from '../../core/worms/treat-rules.ts';
import type { AnimalEditView } from '../../shared/herd-intents.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { BarnContext } from './barn-context.ts';
import { newestScores } from './memory.ts';
import { runRound } from './run-round.ts';

type Of<T extends Intent['type']> = Extract<Intent, { type: T }>;

const WHY = {
  gone: 'animal-gone',
  'already-gone': 'animal-gone',
  'name-in-use': 'name-in-use',
  'females-only': 'females-only',
  'not-in-milk': 'not-in-milk',
  'in-future': 'day-in-future',
  'too-long-ago': 'day-too-long-ago',
  'before-birth': 'before-birth',
  'worn-by-another': 'tag-in-use',
  'same-tag': 'same-tag',
  empty: 'tag-refused',
  'not-15-digits': 'tag-refused',
  'number-too-large': 'tag-refused',
  'test-code': 'tag-refused',
  'no-country': 'tag-refused',
} as const satisfies Record<string, Refusal>;

type Changed =
  | { readonly ok: true; readonly animal: HerdAnimal }
  | { readonly ok: false; readonly why: keyof typeof WHY };

/** Carries out a change of one animal, on disk and in memory, or tells why not. */
function change(
  barn: BarnContext,
  animalId: string,
  how: (animal: HerdAnimal, atMs: number) => Changed,
): Refusal | null {
  const { memory, store } = barn;
  const animal = memory.animals.find(({ id }) => id === animalId);
  if (animal === undefined)
    return memory.gone.some(({ id }) => id === animalId) ? 'animal-gone' : 'no-such-animal';
  const atMs = Math.round(barn.clock.now().wallMs);
  const after = how(animal, atMs);
  if (!after.ok) return WHY[after.why];
  store.animals.change(animal, after.animal, atMs, memory.settings.person);
  const left = after.animal.life.kind !== 'present';
  const others = memory.animals.filter(({ id }) => id !== animalId);
  const animals = left ? others : [...others, after.animal].sort((a, b) => a.name.localeCompare(b.name));
  barn.memory = {
    ...memory,
    animals,
    gone: left ? [...memory.gone, after.animal] : memory.gone,
    herdRevision: memory.herdRevision + 1,
  };
  // A dose on offer rests on what the animal was: in milk, bred, or here at all.
  runRound(barn, { type: 'world-changed', what: 'rules' });
  return null;
}

/** Sets one thing right about an animal. */
export function editHerd(barn: BarnContext, intent: Of<'edit-animal'>): Refusal | null {
  const { memory } = barn;
  const { edit } = intent;
  if (edit.what === 'photo' && edit.photo !== null && barn.photos.read(edit.photo) === null)
    return 'no-such-photo';
  return change(barn, intent.animalId, (animal, atMs) =>
    editAnimal(animal, editFrom(edit), memory.animals, atMs),
  );
}

function editFrom(edit: AnimalEditView): AnimalEdit {
  if (edit.what !== 'day') return edit;
  return { what: 'day', day: edit.day, onMs: edit.on === null ? null : Date.parse(edit.on) };
}

/** Gives an animal a new electronic tag; a tag just read that nobody wore is taken off the list of the unknown. */
export function retag(barn: BarnContext, intent: Of<'retag'>): Refusal | null {
  const { memory } = barn;
  const refused = change(barn, intent.animalId, (animal, atMs) =>
    replaceTag(animal, intent.tag, atMs, memory.animals),
  );
  if (refused === null && memory.unknownTag?.tag === intent.tag)
    barn.memory = { ...barn.memory, unknownTag: null };
  return refused;
}

/** Gives an animal a new visual tag. */
export function retagVisual(barn: BarnContext, intent: Of<'retag-visual'>): Refusal | null {
  const { memory } = barn;
  return change(barn, intent.animalId, (animal, atMs) =>
    replaceVisualTag(animal, intent.lost, intent.fresh, atMs, memory.animals),
  );
}

/** Puts an animal down as sold or dead, now. */
export function leave(barn: BarnContext, intent: Of<'leave-herd'>): Refusal | null {
  const { person } = barn.memory.settings;
  return change(barn, intent.animalId, (animal, atMs) => leaveHerd(animal, intent.how, atMs, person, atMs));
}

/** Writes what was scored of an animal. */
export function score(barn: BarnContext, { animalId, scored }: Of<'score'>): Refusal | null {
  const { memory, store } = barn;
  const animal = memory.animals.find(({ id }) => id === animalId);
  if (animal === undefined) return 'no-such-animal';
  if (Object.values(scored).every((value) => value === null)) return 'nothing-scored';
  if (scored.eyelid !== null && !hasEyelidScore(animal.species)) return 'not-scored-so';
  if (scored.coat !== null && animal.species !== 'goat') return 'not-scored-so';
  const seen = {
    animalId,
    atMs: Math.round(barn.clock.now().wallMs),
    by: memory.settings.person,
    eyelid: scored.eyelid === null ? null : eyelidFrom(scored.eyelid),
    body: scored.body === null ? null : bodyConditionFrom(scored.body),
    soiling: scored.soiling === null ? null : soilingFrom(scored.soiling),
    jaw: scored.jaw,
    coat: scored.coat,
  };
  store.scores.add(seen);
  readScores(barn, animalId);
  return null;
}

/** Reads the scores of an animal anew, after what was written of them. */
function readScores(barn: BarnContext, animalId: string): void {
  const { memory, store } = barn;
  barn.memory = {
    ...memory,
    scores: new Map(memory.scores).set(animalId, newestScores(store, animalId)),
    herdRevision: memory.herdRevision + 1,
  };
}

/** Takes back what was scored of an animal at an instant, as if it had never been looked at then. */
export function takeBackScore(barn: BarnContext, intent: Of<'take-back-score'>): Refusal | null {
  const { memory, store, clock } = barn;
  const { animalId, scoredAt } = intent;
  if (!memory.animals.some(({ id }) => id === animalId)) return 'no-such-animal';
  const atMs = Math.round(clock.now().wallMs);
  const taken = { animalId, scoredAtMs: Date.parse(scoredAt), atMs, by: memory.settings.person };
  if (!store.scores.takeBack(taken)) return 'no-such-score';
  readScores(barn, animalId);
  return null;
}

/** Writes a note about an animal. */
export function note(barn: BarnContext, intent: Of<'note-animal'>): Refusal | null {
  const { memory, store } = barn;
  if (!memory.animals.some(({ id }) => id === intent.animalId)) return 'no-such-animal';
  const atMs = Math.round(barn.clock.now().wallMs);
  store.notes.add(intent.animalId, { atMs, by: memory.settings.person, note: intent.note });
  barn.memory = { ...memory, herdRevision: memory.herdRevision + 1 };
  return null;
}
