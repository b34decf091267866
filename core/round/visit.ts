import type { CautionCode } from '../dosing/cautions.ts';
import { decideDose } from '../dosing/decide.ts';
import type { LapseReason, Offer } from './offer.ts';
import { WEIGHT_LIFE_MS } from './offer.ts';
import { EMPTY_VISIT, type Phase, type Round, type RoundStep, type RoundWorld, type Visit } from './state.ts';

/** A step that changes nothing, for events that mean nothing where the round stands. */
export function ignore(round: Round): RoundStep {
  return { round, effects: [], refused: null };
}

/** A refusal: the round stays as it was. */
export function refuse(round: Round, refused: NonNullable<RoundStep['refused']>): RoundStep {
  return { round, effects: [], refused };
}

/** A step to another phase, without effects. */
export function go(round: Round, phase: Phase): RoundStep {
  return { round: { ...round, phase }, effects: [], refused: null };
}

/** Ends the offer in hand, if there is one, and keeps it waiting for an answer. */
export function lapse(round: Round, reason: LapseReason): RoundStep {
  if (round.phase.step !== 'offered') return ignore(round);
  const { offer, jugId, visit } = round.phase;
  return {
    round: { ...round, phase: { step: 'visit', jugId, visit }, unanswered: [...round.unanswered, offer] },
    effects: [{ do: 'record-lapse', offer, reason }],
    refused: null,
  };
}

/** A visit with nobody in it yet, with the jug the round is done with: after an extra, that one must be taken up again. */
export function freshVisit(round: Round, jugId: string): RoundStep {
  const { backTo } = round;
  return backTo === null
    ? go(round, { step: 'visit', jugId, visit: EMPTY_VISIT })
    : go({ ...round, proof: null, backTo: null }, { step: 'prove-jug', jugId: backTo, visit: null });
}

/** Runs a second change on the outcome of a first, keeping the effects of both in order. */
export function andThen(first: RoundStep, second: (round: Round) => RoundStep): RoundStep {
  const step = second(first.round);
  return { ...step, effects: [...first.effects, ...step.effects] };
}

/**
 * Decides where a visit stands: still gathering, cautioned, or far enough for an offer.
 *
 * An offer needs a known animal, a weight held in this visit and not too old, a ready platform, a jug that exists,
 * no stop, every ask accepted, and a syringe that can measure it.
 */
export function advanceVisit(
  round: Round,
  jugId: string,
  visit: Visit,
  accepted: readonly CautionCode[],
  world: RoundWorld,
): RoundStep {
  const gathering = go(round, { step: 'visit', jugId, visit });
  const animal = world.animals.find((candidate) => candidate.id === visit.who?.animalId);
  const jug = world.jugs.find((candidate) => candidate.id === jugId);
  const { weight } = visit;
  if (animal === undefined || jug === undefined || weight === null || !world.platformReady) return gathering;
  const expiresAtUptimeMs = weight.held.at + WEIGHT_LIFE_MS;
  if (world.now.uptimeMs >= expiresAtUptimeMs)
    return go(round, { step: 'visit', jugId, visit: { ...visit, weight: null } });

  const unanswered = round.unanswered.some((offer) => offer.animal.id === animal.id);
  const namedLate = visit.who?.late ?? false;
  const decision = decideDose(animal, weight.held, jug, { unanswered, namedLate }, world);
  const { regimen, approval, dose, cautions } = decision;
  const open = cautions.some(
    ({ strength, code }) => strength === 'stop' || (strength === 'ask' && !accepted.includes(code)),
  );
  if (open || regimen === null || approval === null || dose === null) {
    return go(round, { step: 'cautions', jugId, visit, decision, accepted });
  }
  const offer: Offer = {
    id: world.freshId,
    animal,
    jug,
    regimen,
    approval,
    weight,
    proof: round.proof,
    group: null,
    dose,
    cautions,
    accepted: cautions.filter(({ strength }) => strength === 'ask'),
    expiresAtUptimeMs,
    expiresAtMs: weight.atMs + WEIGHT_LIFE_MS,
  };
  return go(round, { step: 'offered', jugId, visit, offer });
}
