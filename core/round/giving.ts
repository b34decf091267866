import type { CautionCode } from '../dosing/cautions.ts';
import { hasExpired, type Offer, WEIGHT_LIFE_MS } from './offer.ts';
import type { Round, RoundEvent, RoundStep, RoundWorld } from './state.ts';
import { type Correction, type Treatment, treatmentFrom } from './treatment.ts';
import { advanceVisit, andThen, freshVisit, go, ignore, lapse, refuse } from './visit.ts';

/** How long the screen offers to take a treatment back; later it is a correcting entry in the day book. */
export const UNDO_MS = 60_000;

type GivingEvent = Extract<
  RoundEvent,
  { type: 'accept' | 'give' | 'skip' | 'answer' | 'corrected' | 'next' | 'stored' | 'tick' }
>;

/** The part of the round from the cautions to the record. */
export function reduceGiving(round: Round, event: GivingEvent, world: RoundWorld): RoundStep {
  const { phase } = round;
  switch (event.type) {
    case 'accept':
      return accept(round, event.code, world);
    case 'give':
      return give(round, event, world);
    case 'stored':
      // A late answer may have been about the animal that stands at a caution now.
      if (phase.step === 'cautions') return lookAgain(round, world);
      if (phase.step !== 'logging' || phase.offer.id !== event.treatment.offer.id) return ignore(round);
      return go(round, {
        step: 'logged',
        jugId: phase.jugId,
        visit: phase.visit,
        treatment: event.treatment,
        undoUntil: world.now.uptimeMs + UNDO_MS,
      });
    case 'skip':
      return skip(round, event.reason);
    case 'answer':
      return answer(round, event.offerId, event.given, world);
    case 'corrected':
      return corrected(round, event.correction, world);
    case 'next':
      return phase.step === 'logged' ? freshVisit(round, phase.jugId) : refuse(round, 'wrong-state');
    case 'tick':
      return tick(round, world);
  }
}

function accept(round: Round, code: CautionCode, world: RoundWorld): RoundStep {
  const { phase } = round;
  if (phase.step !== 'cautions') return refuse(round, 'wrong-state');
  const caution = phase.decision.cautions.find((candidate) => candidate.code === code);
  if (caution === undefined) return refuse(round, 'no-such-caution');
  if (caution.strength === 'stop') return refuse(round, 'cannot-pass-stop');
  if (!world.platformReady) return refuse(round, 'platform-not-ready');
  const accepted = phase.accepted.includes(code) ? phase.accepted : [...phase.accepted, code];
  return advanceVisit(round, phase.jugId, phase.visit, accepted, world);
}

type Give = Extract<GivingEvent, { type: 'give' }>;

function give(
  round: Round,
  { offerId, outcome, left = null, readBack = false }: Give,
  world: RoundWorld,
): RoundStep {
  const { phase } = round;
  if (phase.step !== 'offered' || phase.offer.id !== offerId) return refuse(round, 'offer-ended');
  if (hasExpired(phase.offer, world.now)) return { ...lapse(round, 'timed-out'), refused: 'offer-ended' };
  if (left !== null && (outcome !== 'part' || left.value >= phase.offer.dose.plan.total.value))
    return refuse(round, 'more-than-drawn');
  const treatment = record(phase.offer, { outcome, left, readBack }, false, world);
  return {
    round: { ...round, phase: { ...phase, step: 'logging' } },
    effects: [{ do: 'store', treatment }],
    refused: null,
  };
}

type Given = Pick<Treatment, 'outcome' | 'left' | 'readBack'>;

function record(offer: Offer, given: Given, late: boolean, world: RoundWorld) {
  return treatmentFrom(world.freshId, offer, given, late, world);
}

function skip(round: Round, reason: Extract<GivingEvent, { type: 'skip' }>['reason']): RoundStep {
  const { phase } = round;
  switch (phase.step) {
    case 'visit':
    case 'cautions':
    case 'which-animal':
    case 'offered':
      return {
        ...freshVisit(round, phase.jugId),
        effects: [
          {
            do: 'record-skip',
            animalId: phase.visit.who?.animalId ?? null,
            reason,
            // The link may have taken the visit's weight; the offer still stands on it.
            weight: phase.step === 'offered' ? phase.offer.weight : phase.visit.weight,
          },
        ],
      };
    default:
      return refuse(round, 'wrong-state');
  }
}

/** Settles an offer that ended unanswered: given after all, or not given. */
function answer(round: Round, offerId: string, given: boolean, world: RoundWorld): RoundStep {
  const offer = round.unanswered.find((candidate) => candidate.id === offerId);
  if (offer === undefined) return refuse(round, 'offer-ended');
  const settled = { ...round, unanswered: round.unanswered.filter((candidate) => candidate.id !== offerId) };
  if (given) {
    const treatment = record(offer, { outcome: 'whole', left: null, readBack: false }, true, world);
    // The dose counts for what follows only once it is on the disk: `stored` looks again.
    return { round: settled, effects: [{ do: 'store', treatment }], refused: null };
  }
  const noted: RoundStep = { round: settled, effects: [{ do: 'record-not-given', offer }], refused: null };
  return andThen(noted, (after) => lookAgain(after, world));
}

/** Judges a cautioned visit anew: something it was held up by may be gone. */
export function lookAgain(round: Round, world: RoundWorld): RoundStep {
  const { phase } = round;
  if (phase.step !== 'cautions') return ignore(round);
  return advanceVisit(round, phase.jugId, phase.visit, phase.accepted, world);
}

/** A dose taken back as never given makes the same visit whole again; other corrections end it. */
function corrected(round: Round, correction: Correction, world: RoundWorld): RoundStep {
  const { phase } = round;
  if (phase.step !== 'logged' || phase.treatment.id !== correction.treatmentId) return ignore(round);
  if (correction.what.kind !== 'not-given') return freshVisit(round, phase.jugId);
  return advanceVisit(round, phase.jugId, phase.visit, [], world);
}

function tick(round: Round, world: RoundWorld): RoundStep {
  const { phase } = round;
  if (phase.step === 'offered' && hasExpired(phase.offer, world.now)) {
    return andThen(lapse(round, 'timed-out'), (after) => freshVisit(after, phase.jugId));
  }
  if (phase.step === 'visit' || phase.step === 'cautions' || phase.step === 'which-animal') {
    const { weight } = phase.visit;
    const old = weight !== null && world.now.uptimeMs >= weight.held.at + WEIGHT_LIFE_MS;
    return old ? freshVisit(round, phase.jugId) : ignore(round);
  }
  return ignore(round);
}
