import type { Held } from '../weighing/settle.ts';
import type { Identity, Round, RoundEvent, RoundStep, RoundWorld, Visit } from './state.ts';
import { EMPTY_VISIT } from './state.ts';
import { advanceVisit, andThen, freshVisit, go, ignore, lapse, refuse } from './visit.ts';

/** A tag read or a tap on a tile counts for this long before the animal steps on. */
export const IDENTITY_LIFE_MS = 20_000;

type PlatformEvent = Extract<
  RoundEvent,
  { type: 'identified' | 'doubtful-tag' | 'stepped-on' | 'held' | 'stepped-off' | 'platform-blank' }
>;

/** The part of the round that follows the platform and the wand. */
export function reducePlatform(round: Round, event: PlatformEvent, world: RoundWorld): RoundStep {
  switch (event.type) {
    case 'identified':
      return identified(round, event.animalId, event.via, world);
    case 'doubtful-tag':
      return doubtfulTag(round, event.animalIds);
    case 'stepped-on':
      return steppedOn(round, world);
    case 'held':
      return held(round, event.held, world);
    case 'stepped-off':
      return withVisit(round, (visit) => ({ ...afterLeaving(visit), onDeck: false }));
    case 'platform-blank':
      return platformBlank(round);
  }
}

/** A new animal on the platform: a visit of its own, keeping only an identity that is fresh enough. */
function steppedOn(round: Round, world: RoundWorld): RoundStep {
  const { phase } = round;
  if (phase.step === 'no-jug') return ignore(round);
  if (phase.step === 'prove-jug') return withoutCarried(round);
  // The record under way is of the animal before; only its weight is no longer that of whoever stands there.
  if (phase.step === 'logging') return go(round, { ...phase, visit: EMPTY_VISIT });
  const known = phase.step === 'visit' && phase.visit.weight === null ? phase.visit.who : null;
  const who = known !== null && isFresh(known, world) ? known : null;
  const visit = { who, weight: null, onDeck: true };
  // What is in hand was taken up for the animal before: this one is for the round's own jug, once that is in hand.
  if (round.backTo !== null)
    return andThen(lapse(round, 'new-animal'), (after) => freshVisit(after, phase.jugId));
  const others = (who?.others ?? []).filter((other) => isFresh(other, world)).map(({ animalId }) => animalId);
  return andThen(lapse(round, 'new-animal'), (after) =>
    who === null || others.length === 0
      ? go(after, { step: 'visit', jugId: phase.jugId, visit })
      : go(after, {
          step: 'which-animal',
          jugId: phase.jugId,
          visit: { ...visit, who: null },
          between: [...others, who.animalId],
        }),
  );
}

function isFresh({ at }: { readonly at: number }, world: RoundWorld): boolean {
  return world.now.uptimeMs - at <= IDENTITY_LIFE_MS;
}

function held(round: Round, weight: Held, world: RoundWorld): RoundStep {
  const { phase } = round;
  switch (phase.step) {
    case 'visit':
    case 'cautions':
    case 'offered': {
      if (!phase.visit.onDeck) return ignore(round);
      const visit = { ...phase.visit, weight: { held: weight, atMs: world.now.wallMs }, dosed: false };
      return andThen(lapse(round, 'reweighed'), (after) =>
        advanceVisit(after, phase.jugId, visit, [], world),
      );
    }
    case 'which-animal':
      if (!phase.visit.onDeck) return ignore(round);
      return go(round, {
        ...phase,
        visit: { ...phase.visit, weight: { held: weight, atMs: world.now.wallMs } },
      });
    default:
      return ignore(round);
  }
}

function identified(round: Round, animalId: string, via: Identity['via'], world: RoundWorld): RoundStep {
  const { phase } = round;
  if (!world.animals.some((animal) => animal.id === animalId)) return refuse(round, 'no-such-animal');
  const who: Identity = { animalId, via, at: world.now.uptimeMs };
  switch (phase.step) {
    case 'no-jug':
    case 'logging':
      return refuse(round, 'wrong-state');
    case 'prove-jug':
      // Whose weight is carried along is doubtful once another tag was read.
      return phase.visit?.who?.animalId === animalId
        ? ignore(round)
        : { ...withoutCarried(round), refused: 'wrong-state' };
    case 'logged':
      // The wand keeps reading the animal that still stands there after its dose: that is no new visit.
      if (via === 'wand' && phase.visit.onDeck && phase.treatment.offer.animal.id === animalId) {
        return ignore(round);
      }
      if (round.backTo !== null) return freshVisit(round, phase.jugId);
      return go(round, { step: 'visit', jugId: phase.jugId, visit: { ...EMPTY_VISIT, who } });
    case 'which-animal':
      // Only a person's choice settles a doubt; another read of the wand would be more of the same.
      if (via === 'wand' || !phase.between.includes(animalId)) return refuse(round, 'wrong-state');
      return advanceVisit(round, phase.jugId, { ...phase.visit, who }, [], world);
    case 'visit':
    case 'cautions':
    case 'offered':
      return identifiedInVisit(round, phase.jugId, phase.visit, who, world);
  }
}

/** A tag that names several animals names none: a person says which it is, unless one of them was just chosen. */
function doubtfulTag(round: Round, animalIds: readonly string[]): RoundStep {
  const { phase } = round;
  const ask = (jugId: string, visit: Visit) => (after: Round) =>
    go(after, { step: 'which-animal', jugId, visit: { ...visit, who: null }, between: animalIds });
  switch (phase.step) {
    case 'no-jug':
    case 'logging':
    case 'which-animal':
      return refuse(round, 'wrong-state');
    case 'prove-jug':
      return { ...withoutCarried(round), refused: 'wrong-state' };
    case 'logged':
      // The wand keeps reading the animal that still stands there after its dose.
      if (phase.visit.onDeck && animalIds.includes(phase.treatment.offer.animal.id)) return ignore(round);
      if (round.backTo !== null) return freshVisit(round, phase.jugId);
      return ask(phase.jugId, EMPTY_VISIT)(round);
    case 'visit':
    case 'cautions':
    case 'offered': {
      const { jugId, visit } = phase;
      const { who, onDeck } = visit;
      if (who !== null && who.via !== 'wand' && animalIds.includes(who.animalId)) return ignore(round);
      // After step-off whoever wears it is the next one, and the weight is not its own.
      const next = !onDeck && visit.weight !== null;
      return andThen(
        lapse(round, next ? 'new-animal' : 'identity-doubted'),
        ask(jugId, next ? EMPTY_VISIT : visit),
      );
    }
  }
}

function identifiedInVisit(
  round: Round,
  jugId: string,
  visit: Visit,
  who: Identity,
  world: RoundWorld,
): RoundStep {
  const before = visit.who;
  if (before?.animalId === who.animalId) {
    return visit.weight === null && round.phase.step === 'visit'
      ? go(round, { step: 'visit', jugId, visit: { ...visit, who: withOthers(who, before) } })
      : ignore(round);
  }
  const wandInvolved = who.via === 'wand' || before?.via === 'wand';
  if (before !== null && visit.onDeck && wandInvolved) {
    return andThen(lapse(round, 'identity-doubted'), (after) =>
      go(after, {
        step: 'which-animal',
        jugId,
        visit: { ...visit, who: null },
        between: [before.animalId, who.animalId],
      }),
    );
  }
  // After step-off another animal is the next one: the weight stays with the one that was weighed, unless that was
  // only named by a tap, and the tap is taken back by another.
  const next = !visit.onDeck && visit.weight !== null && (wandInvolved || round.phase.step === 'offered');
  const named = { ...withOthers(who, before), late: !visit.onDeck && visit.weight !== null };
  const fromHere = next ? { ...EMPTY_VISIT, who } : { ...visit, who: named };
  return andThen(lapse(round, 'new-animal'), (after) => advanceVisit(after, jugId, fromHere, [], world));
}

/** An animal that leaves unweighed takes its identity along: whoever steps on next is asked for anew. */
function afterLeaving(visit: Visit): Visit {
  return visit.onDeck && visit.weight === null ? { ...visit, who: null } : visit;
}

/** Tags read one after the other before a step-on: whichever animal steps on, all of them are remembered. */
function withOthers(who: Identity, before: Identity | null): Identity {
  // A tap is a choice, and settles what was read before it.
  if (before === null || who.via !== 'wand') return who;
  const { animalId, at, others = [] } = before;
  return { ...who, others: [...others, { animalId, at }].filter((other) => other.animalId !== who.animalId) };
}

/**
 * No weight outlives its connection, and no animal that stood there unseen keeps its identity.
 *
 * An offer already shown stays with the weight it was made of, so that a dose swallowed can be logged.
 */
function platformBlank(round: Round): RoundStep {
  const { phase } = round;
  if (phase.step === 'no-jug') return ignore(round);
  if (phase.step === 'prove-jug') return withoutCarried(round);
  const begun = phase.visit.onDeck || phase.visit.weight !== null;
  if (!begun) return ignore(round);
  switch (phase.step) {
    case 'visit':
    case 'cautions':
      return go(round, { step: 'visit', jugId: phase.jugId, visit: EMPTY_VISIT });
    case 'which-animal':
      return go(round, { ...phase, visit: EMPTY_VISIT });
    default:
      return go(round, { ...phase, visit: { ...phase.visit, weight: null, onDeck: false } });
  }
}

/** An animal or a link that breaks into the proof of an extra's jug ends what was carried to it: the round's own jug is next. */
function withoutCarried(round: Round): RoundStep {
  const { phase } = round;
  if (phase.step !== 'prove-jug' || phase.visit === null) return ignore(round);
  return freshVisit(round, phase.jugId);
}

function withVisit(round: Round, change: (visit: Visit) => Visit): RoundStep {
  const { phase } = round;
  if (phase.step === 'no-jug') return ignore(round);
  if (phase.step !== 'prove-jug') return go(round, { ...phase, visit: change(phase.visit) });
  return phase.visit === null ? ignore(round) : go(round, { ...phase, visit: change(phase.visit) });
}
