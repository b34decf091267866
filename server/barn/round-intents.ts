import { checkTag } from '../../core/herd/tag.ts';
import { tagOwner } from '../../core/herd/tag-owner.ts';
import { vetTime } from '../../core/medicine/approval.ts';
import { millilitres } from '../../core/quantity/volume.ts';
import { effectOf } from '../../core/round/day-book.ts';
import { groupTreatment } from '../../core/round/group-given.ts';
import type { Correction } from '../../core/round/treatment.ts';
import type { CorrectionKind, Intent, Refusal } from '../../shared/intent.ts';
import type { BarnContext } from './barn-context.ts';
import type { AskedBy } from './carry-out.ts';
import { withEntry } from './memory.ts';
import { roundWorld, runRound, storeTreatment } from './run-round.ts';

type Of<T extends Intent['type']> = Extract<Intent, { type: T }>;

/** A tag read: it names the animal, or waits to be given to one. */
export function readTag(barn: BarnContext, intent: Of<'read-tag'>): Refusal | null {
  const checked = checkTag(intent.tag);
  if (!checked.ok) return 'tag-refused';
  const owner = tagOwner(checked.tag, barn.memory.animals);
  if (owner.kind === 'shared') return runRound(barn, { type: 'doubtful-tag', animalIds: owner.animalIds });
  if (owner.kind !== 'wears') {
    barn.memory = { ...barn.memory, unknownTag: { tag: checked.tag, at: barn.clock.now().uptimeMs } };
    return owner.kind === 'wore' ? 'lost-tag' : 'no-such-tag';
  }
  return runRound(barn, { type: 'identified', animalId: owner.animalId, via: 'wand' });
}

/** A dose given, whole or not, with what the marks say of the rest. */
export function give(
  barn: BarnContext,
  { offerId, outcome, leftMl = null }: Of<'give'>,
  by: AskedBy,
): Refusal | null {
  const left = leftMl === null ? null : millilitres(leftMl);
  return runRound(barn, { type: 'give', offerId, outcome, left, readBack: by === 'voice' });
}

/** A group's dose given to one of its animals. */
export function giveGroup(barn: BarnContext, intent: Of<'give-group'>): Refusal | null {
  const treatment = groupTreatment(intent, barn.memory.round, roundWorld(barn));
  if (typeof treatment === 'string') return treatment;
  storeTreatment(barn, treatment);
  return null;
}

/** A correcting entry: it stands beside its treatment. What was taken back need not be taken back again. */
export function correct(barn: BarnContext, intent: Of<'correct'>): Refusal | null {
  const { memory, store } = barn;
  const entry = store.dayBook.entry(intent.treatmentId);
  if (entry === undefined) return 'no-such-treatment';
  const takenBack = effectOf(entry).animalId === null;
  if (takenBack && (intent.what.kind === 'not-given' || intent.what.kind === 'vet-time'))
    return 'already-corrected';
  if (intent.what.kind === 'wrong-animal') {
    const { animalId } = intent.what;
    if (!memory.animals.some((animal) => animal.id === animalId)) return 'no-such-animal';
  }
  const correction: Correction = {
    id: barn.newId(),
    treatmentId: intent.treatmentId,
    what: whatOf(intent.what),
    atMs: Math.round(barn.clock.now().wallMs),
    by: memory.settings.person,
  };
  const corrected = store.dayBook.addCorrection(correction);
  barn.memory = withEntry(memory, store, corrected);
  runRound(barn, { type: 'corrected', correction });
  return null;
}

function whatOf(what: CorrectionKind): Correction['what'] {
  if (what.kind !== 'vet-time') return what;
  const { meatHours, meatDays, milkHours, milkDays } = what;
  return { kind: 'vet-time', meat: vetTime(meatHours, meatDays), milk: vetTime(milkHours, milkDays) };
}

/** Pours a jug away; a round with it in hand ends. */
export function discardJug(barn: BarnContext, intent: Of<'jug-discard'>): Refusal | null {
  const jug = barn.memory.jugs.find((candidate) => candidate.id === intent.jugId);
  if (jug === undefined) return 'no-such-jug';
  if (jug.discardedAtMs !== null) return 'jug-out-of-life';
  const atMs = Math.round(barn.clock.now().wallMs);
  barn.store.jugs.discard(jug.id, atMs);
  const jugs = barn.memory.jugs.map((each) => (each === jug ? { ...jug, discardedAtMs: atMs } : each));
  barn.memory = { ...barn.memory, jugs };
  runRound(barn, { type: 'world-changed', what: 'jugs' });
  return null;
}
