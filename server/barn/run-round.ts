import { hoursOffFeedAt } from '../../core/growth/weighing.ts';
import { forDosing } from '../../core/herd/herd-animal.ts';
import { doubtOf } from '../../core/herd/plausible.ts';
import type { Moment } from '../../core/moment.ts';
import { reduceRound } from '../../core/round/reduce.ts';
import type { RoundEffect, RoundEvent, RoundRefusal, RoundWorld } from '../../core/round/state.ts';
import type { Treatment } from '../../core/round/treatment.ts';
import { type VisitWeighed, weighingEnded } from '../../core/round/weighed.ts';
import type { Deck } from '../../core/weighing/deck.ts';
import { weighingId } from '../herd/history.ts';
import { provenNow } from '../worms/tests-now.ts';
import type { BarnContext } from './barn-context.ts';
import { checkingOf, syringesOnHand, withEntry } from './memory.ts';

/** What the round may look at now. */
export function roundWorld(barn: BarnContext): RoundWorld {
  const { memory, clock } = barn;
  const now = clock.now();
  return {
    now,
    clockTrusted: clock.isTrusted(),
    diskKeeps: barn.disk.trouble() === null,
    timeZone: barn.config.timeZone,
    formulary: memory.formulary,
    animals: memory.animals.map(forDosing),
    jugs: memory.jugs,
    approvals: memory.approvals,
    syringes: syringesOnHand(memory),
    scale: checkingOf(memory, 'platform'),
    earlier: memory.earlier,
    proven: provenNow(barn),
    platformReady: barn.linkOf('platform') === 'ready' && memory.deck.verdict !== 'blank',
    standing: standingOn(memory.deck, now),
    onBench: onBench(barn),
    by: memory.settings.person,
    freshId: barn.newId(),
  };
}

/** What stands on the bench at rest, unless a jug is being mixed or a check is being made there. */
export function onBench({ memory, linkOf }: BarnContext): RoundWorld['onBench'] {
  const { bench, mixing } = memory;
  const filling = mixing.step === 'pour' || mixing.step === 'powder';
  if (linkOf('bench') !== 'ready' || bench.live === null || filling) return 'bench-not-ready';
  if (bench.net) return 'scale-tared';
  if (bench.steady === null || bench.uncertainty === null) return 'bench-moving';
  return { mass: bench.steady, uncertainty: bench.uncertainty };
}

function standingOn({ onSince, held }: Deck, now: Moment): RoundWorld['standing'] {
  if (onSince === null) return null;
  return { weight: held === null ? null : { held, atMs: now.wallMs - (now.uptimeMs - held.at) } };
}

/** Takes the round one event further and carries out what that asks for. Throws when the disk refuses. */
export function runRound(barn: BarnContext, event: RoundEvent): RoundRefusal | null {
  const before = barn.memory.round;
  const step = reduceRound(before, event, roundWorld(barn));
  barn.memory = { ...barn.memory, round: step.round };
  const weighed = weighingEnded(before, step.round);
  if (weighed !== null) keepWeighing(barn, weighed);
  for (const effect of step.effects) carryOut(barn, effect);
  return step.refused;
}

/** Writes the weight of a visit without a dose. One hard to believe is kept too, and is not the last weight. */
function keepWeighing(barn: BarnContext, { animalId, weight }: VisitWeighed): void {
  const { memory, store } = barn;
  const { mass, uncertainty } = weight.held;
  const atMs = Math.round(weight.atMs);
  const hoursOffFeed = hoursOffFeedAt(memory.settings.offFeedSinceMs, atMs);
  store.weighings.add(
    animalId,
    { mass, uncertainty, atMs, method: 'scale', hoursOffFeed },
    memory.settings.person,
  );
  const animals = memory.animals.map((animal) =>
    animal.id === animalId && doubtOf(animal, mass, atMs) === null
      ? { ...animal, lastWeight: { mass, atMs } }
      : animal,
  );
  barn.memory = { ...memory, animals, herdRevision: memory.herdRevision + 1 };
}

/** The weight of a dose stands in the day book, which knows no feed: a word beside it says how long it was off. */
function noteOffFeed({ memory, store }: BarnContext, { offer, givenAtMs }: Treatment): void {
  const { settings } = memory;
  const hoursOffFeed = hoursOffFeedAt(settings.offFeedSinceMs, offer.weight.atMs);
  if (hoursOffFeed === null) return;
  const { animal, weight } = offer;
  store.weightWords.add(animal.id, weighingId(weight), { hoursOffFeed }, settings.person, givenAtMs);
}

/** Writes a treatment into the day book, and tells the round. */
export function storeTreatment(barn: BarnContext, given: Treatment): void {
  const { store, memory, clock } = barn;
  const treatment = { ...given, givenAtMs: Math.round(given.givenAtMs) };
  const sequence = store.dayBook.addTreatment(treatment);
  if (treatment.offer.group === null) noteOffFeed(barn, treatment);
  if (treatment.clockTrusted) clock.sawRecordAt(treatment.givenAtMs);
  barn.memory = withEntry(memory, store, { sequence, treatment, corrections: [] });
  runRound(barn, { type: 'stored', treatment });
}

function carryOut(barn: BarnContext, effect: RoundEffect): void {
  const { store, memory, clock } = barn;
  const stamp = {
    id: barn.newId(),
    atMs: Math.round(clock.now().wallMs),
    by: memory.settings.person,
    clockTrusted: clock.isTrusted(),
  };
  switch (effect.do) {
    case 'store':
      storeTreatment(barn, effect.treatment);
      return;
    case 'record-skip':
      store.dayBook.addUntreated({
        ...stamp,
        kind: 'skipped',
        animalId: effect.animalId,
        offerId: null,
        reason: effect.reason,
        weightGrams: effect.weight?.held.mass.value ?? null,
      });
      return;
    case 'record-lapse':
    case 'record-not-given':
      store.dayBook.addUntreated({
        ...stamp,
        kind: effect.do === 'record-lapse' ? 'lapsed' : 'not-given',
        animalId: effect.offer.animal.id,
        offerId: effect.offer.id,
        reason: effect.do === 'record-lapse' ? effect.reason : null,
        weightGrams: effect.offer.weight.held.mass.value,
      });
  }
}
