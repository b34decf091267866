import type { Held } from '../weighing/settle.ts';
import type { Identity, Round, RoundEvent, RoundStep, RoundWorld, Visit } from './state.ts';
import { EMPTY_VISIT } from './state.ts';
import { advanceVisit, andThen, go, ignore, lapse, refuse } from './visit.ts';

/** A tag read or a tap on a tile counts for this long before the animal steps on. */
export const IDENTITY_LIFE_MS = 20_000;

type PlatformEvent = Extract<
  RoundEvent,
  { type: 'identified' | 'stepped-on' | 'held' | 'stepped-off' | 'platform-blank' }
>;

/** The part of the round that follows the platform and the wand. */
export function reducePlatform(round: Round, event: PlatformEvent, world: RoundWorld): RoundStep {
  switch (event.type) {
    case 'identified':
      return identified(round, event.animalId, event.via, world);
    case 'stepped-on':
      return steppedOn(round, world);
    case 'held':
      return held(round, event.held, world);
    case 'stepped-off':
      return withVisit(round, (visit) => ({ ...visit, onDeck: false }));
    case 'platform-blank':
      return platformBlank(round);
  }
}

/** A new animal on the platform: a visit of its own, keeping only an identity that is fresh enough. */
function steppedOn(round: Round, world: RoundWorld): RoundStep {
  const { phase } = round;
  if (phase.step === 'no-jug' || phase.step === 'prove-jug' || phase.step === 'logging') return ignore(round);
  const who = phase.step === 'visit' && phase.visit.weight === null ? fresh(phase.visit.who, world) : null;
  return andThen(lapse(round, 'new-animal'), (after) =>
    go(after, { step: 'visit', jugId: phase.jugId, visit: { who, weight: null, onDeck: true } }),
  );
}

function fresh(who: Identity | null, world: RoundWorld): Identity | null {
  return who !== null && world.now.uptimeMs - who.at <= IDENTITY_LIFE_MS ? who : null;
}

function held(round: Round, weight: Held, world: RoundWorld): RoundStep {
  const { phase } = round;
  switch (phase.step) {
    case 'visit':
    case 'cautions':
    case 'offered': {
      if (!phase.visit.onDeck) return ignore(round);
      const visit = { ...phase.visit, weight: { held: weight, atMs: world.now.wallMs } };
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
    case 'prove-jug':
    case 'logging':
      return refuse(round, 'wrong-state');
    case 'logged':
      // The wand keeps reading the animal that still stands there after its dose: that is no new visit.
      if (via === 'wand' && phase.visit.onDeck && phase.treatment.offer.animal.id === animalId) {
        return ignore(round);
      }
      return go(round, { step: 'visit', jugId: phase.jugId, visit: { ...EMPTY_VISIT, who } });
    case 'which-animal':
      // Only a choice on the screen settles a doubt; another read of the wand would be more of the same.
      if (via === 'wand' || !phase.between.includes(animalId)) return refuse(round, 'wrong-state');
      return advanceVisit(round, phase.jugId, { ...phase.visit, who }, [], world);
    case 'visit':
    case 'cautions':
    case 'offered':
      return identifiedInVisit(round, phase.jugId, phase.visit, who, world);
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
    return visit.weight === null
      ? go(round, { step: 'visit', jugId, visit: { ...visit, who } })
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
  // After step-off the wand may be reading the next animal: the weight stays with the one that was weighed.
  const next =
    !visit.onDeck && visit.weight !== null && (who.via === 'wand' || round.phase.step === 'offered');
  const fromHere = next ? { ...EMPTY_VISIT, who } : { ...visit, who };
  return andThen(lapse(round, 'new-animal'), (after) => advanceVisit(after, jugId, fromHere, [], world));
}

/** No weight outlives its connection; an offer already shown stays, so that a dose swallowed can be logged. */
function platformBlank(round: Round): RoundStep {
  const { phase } = round;
  switch (phase.step) {
    case 'visit':
    case 'cautions':
      return go(round, {
        step: 'visit',
        jugId: phase.jugId,
        visit: { ...phase.visit, weight: null, onDeck: false },
      });
    case 'which-animal':
      return go(round, { ...phase, visit: { ...phase.visit, weight: null, onDeck: false } });
    default:
      return withVisit(round, (visit) => ({ ...visit, onDeck: false }));
  }
}

function withVisit(round: Round, change: (visit: Visit) => Visit): RoundStep {
  const { phase } = round;
  if (phase.step === 'no-jug' || phase.step === 'prove-jug') return ignore(round);
  return go(round, { ...phase, visit: change(phase.visit) });
}
