import { SYRINGE_CATALOGUE } from '../../core/dosing/syringe.ts';
import { moveOn } from '../../core/first-start/first-start.ts';
import { newcomer } from '../../core/herd/herd-animal.ts';
import { sameNumber } from '../../core/herd/numbers.ts';
import { checkTag } from '../../core/herd/tag.ts';
import { figuresOf, vetTime, whyNotApprovable } from '../../core/medicine/approval.ts';
import { regimenById, regimensFor } from '../../core/medicine/formulary.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { Settings } from '../store/settings.ts';
import type { BarnContext } from './barn-context.ts';
import { isIdle } from './is-idle.ts';
import { runRound } from './run-round.ts';

/** How long a tag that belongs to no animal is offered to a new one. */
export const UNKNOWN_TAG_MS = 60_000;

type Of<T extends Intent['type']> = Extract<Intent, { type: T }>;

/** Enrols an animal: its name and its tag must be free. Its tag just read names it at the platform at once. */
export function enrol(barn: BarnContext, intent: Of<'enrol'>): Refusal | null {
  const { memory, store } = barn;
  if (memory.animals.some((animal) => sameNumber(animal.name) === sameNumber(intent.name)))
    return 'name-in-use';
  if (intent.tag !== null) {
    if (!checkTag(intent.tag).ok) return 'tag-refused';
    if (memory.animals.some((animal) => animal.tag === intent.tag)) return 'tag-in-use';
  }
  const animal = newcomer({
    id: barn.newId(),
    name: intent.name,
    species: intent.species,
    class: intent.class,
    tag: intent.tag,
    inMilk: intent.inMilk,
    bornAtMs: null,
    bredAtMs: null,
    malesRemovedAtMs: null,
    lastWeight: null,
  });
  store.animals.add(animal, memory.settings.person);
  const animals = [...memory.animals, animal].sort((a, b) => a.name.localeCompare(b.name));
  const isRead = intent.tag !== null && memory.unknownTag?.tag === intent.tag;
  const { uptimeMs } = barn.clock.now();
  const justNow = isRead && uptimeMs - (memory.unknownTag?.at ?? 0) < UNKNOWN_TAG_MS;
  barn.memory = { ...memory, animals, unknownTag: isRead ? null : memory.unknownTag };
  // Refused where nobody stands there and nothing is in hand: it is enrolled all the same.
  if (justNow) runRound(barn, { type: 'identified', animalId: animal.id, via: 'wand' });
  return null;
}

/** Approves a regimen for this farm, in the name of the person working. */
export function approve(barn: BarnContext, intent: Of<'approve'>): Refusal | null {
  const { formulary, settings, approvals, retiredIds } = barn.memory;
  const found = regimenById(formulary, intent.regimenId);
  if (found === undefined || retiredIds.has(intent.regimenId)) return 'no-such-regimen';
  const { medicine, regimen } = found;
  const { direction, targetMgPerKg = null, vet = null } = intent;
  const why = whyNotApprovable(regimen, { direction, targetMgPerKg });
  if (why !== null) return why;
  const atMs = Math.round(barn.clock.now().wallMs);
  // One rule of a medicine for a species: with two in force nobody could tell which one a dose follows.
  for (const { id } of regimensFor(medicine, regimen.species)) {
    if (id !== regimen.id && approvals.some(({ regimenId }) => regimenId === id))
      barn.store.approvals.withdraw(id, settings.person, atMs);
  }
  barn.store.approvals.approve({
    regimenId: intent.regimenId,
    figures: figuresOf(regimen),
    by: settings.person,
    direction,
    vet,
    atMs,
    targetMgPerKg,
    meat: vetTime(intent.meatHours, intent.meatDays ?? null),
    milk: vetTime(intent.milkHours, intent.milkDays ?? null),
  });
  return rulesChanged(barn);
}

/** Takes an approval back; an offer that rested on it ends. */
export function withdrawApproval(barn: BarnContext, intent: Of<'withdraw-approval'>): Refusal | null {
  const { settings, formulary } = barn.memory;
  if (regimenById(formulary, intent.regimenId) === undefined) return 'no-such-regimen';
  barn.store.approvals.withdraw(intent.regimenId, settings.person, Math.round(barn.clock.now().wallMs));
  return rulesChanged(barn);
}

function rulesChanged(barn: BarnContext): null {
  const { approvals } = barn.store;
  barn.memory = { ...barn.memory, approvals: approvals.inForce(), vets: approvals.vets() };
  runRound(barn, { type: 'world-changed', what: 'rules' });
  return null;
}

/** Keeps which syringes are on hand; an offer measured with another set ends. */
export function setSyringes(barn: BarnContext, intent: Of<'set-syringes'>): Refusal | null {
  const known = new Set(SYRINGE_CATALOGUE.map((syringe) => syringe.id));
  if (intent.syringeIds.some((id) => !known.has(id))) return 'no-such-syringe';
  keep(barn, 'syringeIds', [...new Set(intent.syringeIds)]);
  runRound(barn, { type: 'world-changed', what: 'syringes' });
  return null;
}

/** Says who is working. */
export function setPerson(barn: BarnContext, intent: Of<'set-person'>): Refusal | null {
  if (!barn.config.people.includes(intent.name)) return 'no-such-person';
  return keep(barn, 'person', intent.name);
}

/** Sets the language of the screen, and with it that of the voice: whoever reads one understands the other. */
export function setLanguage(barn: BarnContext, language: Settings['language']): null {
  keep(barn, 'voice', { ...barn.memory.settings.voice, language });
  return keep(barn, 'language', language);
}

/** Moves the first start on; refused where it stands at another step by now. */
export function goOnFirstStart(barn: BarnContext, { step, move }: Of<'first-start'>): Refusal | null {
  const moved = moveOn(barn.memory.settings.firstStart, step, move);
  return moved === 'not-there' ? 'wrong-state' : keep(barn, 'firstStart', moved);
}

/** Begins a practice round; refused while work waits here, since a new start would forget it. */
export function beginPractice({ memory, beginPractice: begin }: BarnContext): Refusal | null {
  if (begin === null) return 'wrong-state';
  if (!isIdle(memory) || memory.round.unanswered.length > 0) return 'work-waits';
  begin();
  return null;
}

/** Keeps one setting on disk and in memory. */
export function keep<K extends keyof Settings>(barn: BarnContext, name: K, value: Settings[K]): null {
  barn.store.settings.write(name, value);
  barn.memory = { ...barn.memory, settings: { ...barn.memory.settings, [name]: value } };
  return null;
}
