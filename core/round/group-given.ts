import type { CautionCode } from '../dosing/cautions.ts';
import { decideDose } from '../dosing/decide.ts';
import { getsOf, groupDose } from '../dosing/group-dose.ts';
import { stopMs } from '../dosing/repeats.ts';
import { combine } from '../dosing/uncertainty.ts';
import { sameActive } from '../medicine/formulary.ts';
import { remaining } from '../mixing/jug.ts';
import { groupMember } from './group-weights.ts';
import { WEIGHT_LIFE_MS } from './offer.ts';
import type { Round, RoundWorld } from './state.ts';
import { type Treatment, treatmentFrom } from './treatment.ts';

/** A dose given to one animal of a group, as the keeper says it was. */
export interface GroupGiven {
  readonly jugId: string;
  /** The whole group the dose was for, those dosed already too: its heaviest sets the volume. */
  readonly animalIds: readonly string[];
  readonly animalId: string;
  /** The volume that was shown. */
  readonly volumeMl: number;
  /** The asks of this animal that were accepted by a held press. */
  readonly accepted: readonly CautionCode[];
}

/** Why a dose of a group is not written. */
export type GroupRefusal =
  | 'no-such-jug'
  | 'no-such-animal'
  | 'jug-not-in-hand'
  | 'cannot-pass-stop'
  | 'ask-open'
  | 'group-changed';

/**
 * The record of a group's dose given to one of its animals, or why there is none.
 *
 * Nothing is offered here: no weight was held in a visit. It is a record of what was done, guarded as at the platform:
 * the jug proved in hand, the rule approved, no stop, every ask accepted, and the volume still the one that was shown.
 */
export function groupTreatment(given: GroupGiven, round: Round, world: RoundWorld): Treatment | GroupRefusal {
  const jug = world.jugs.find(({ id }) => id === given.jugId);
  if (jug === undefined) return 'no-such-jug';
  if (!isInHand(round, given.jugId)) return 'jug-not-in-hand';
  const animal = world.animals.find(({ id }) => id === given.animalId);
  if (animal === undefined || !given.animalIds.includes(animal.id)) return 'no-such-animal';
  const member = groupMember(animal, world.now);
  if (typeof member === 'string') return 'group-changed';

  const unanswered = round.unanswered.some((offer) => offer.animal.id === animal.id);
  const decision = decideDose(animal, member.weight, jug, { unanswered, namedLate: false }, world);
  const { regimen, approval, cautions } = decision;
  if (cautions.some(({ strength }) => strength === 'stop') || regimen === null || approval === null)
    return 'cannot-pass-stop';
  // Nothing here ends an offer, so even with a clock nobody trusts a second press must find the first.
  const twice = world.earlier.some(
    (dose) =>
      dose.animalId === animal.id &&
      sameActive(world.formulary, dose.medicineId, jug.medicineId) &&
      Math.abs(world.now.wallMs - dose.givenAtMs) < stopMs(regimen),
  );
  if (twice) return 'cannot-pass-stop';
  const asks = cautions.filter(({ strength }) => strength === 'ask');
  if (!asks.every(({ code }) => given.accepted.includes(code))) return 'ask-open';

  const group = world.animals.filter(
    ({ id, species }) => given.animalIds.includes(id) && species === animal.species,
  );
  const members = group
    .map((each) => groupMember(each, world.now))
    .filter((each) => typeof each !== 'string');
  const found = groupDose(members, { regimen, jug, syringes: world.syringes });
  if (found.kind !== 'dose' || members.length < given.animalIds.length) return 'group-changed';
  const { dose, heaviest } = found;
  const setBy = group.find(({ id }) => id === heaviest.id);
  if (setBy === undefined || setBy.lastWeight === null || animal.lastWeight === null) return 'group-changed';
  if (dose.plan.total.value !== given.volumeMl) return 'group-changed';
  if (dose.plan.total.value > remaining(jug).value) return 'cannot-pass-stop';

  const doubt = member.weight.uncertainty.value / member.weight.mass.value;
  const offer = {
    id: world.freshId,
    animal,
    jug,
    regimen,
    approval,
    weight: { held: member.weight, atMs: animal.lastWeight.atMs },
    proof: round.proof,
    group: {
      heaviestId: heaviest.id,
      heaviestName: setBy.name,
      heaviest: setBy.lastWeight.mass,
      weighedAtMs: setBy.lastWeight.atMs,
      members: members.length,
    },
    dose: {
      ...dose,
      delivered: getsOf(member, dose, jug),
      budget: combine([
        { of: 'scale and animal', relative: doubt },
        { of: 'strength of the jug', relative: jug.relative },
        { of: 'syringe', relative: dose.plan.relative },
      ]),
    },
    cautions,
    accepted: asks,
    expiresAtUptimeMs: world.now.uptimeMs + WEIGHT_LIFE_MS,
    expiresAtMs: world.now.wallMs + WEIGHT_LIFE_MS,
  };
  return treatmentFrom(world.freshId, offer, { outcome: 'whole', left: null, readBack: false }, false, world);
}

/** Whether the jug is proved in hand and no animal's visit is under way with it. */
export function isInHand({ phase, proof }: Round, jugId: string): boolean {
  if (proof === null || !('jugId' in phase) || phase.jugId !== jugId) return false;
  return (
    phase.step === 'logged' || (phase.step === 'visit' && phase.visit.weight === null && !phase.visit.onDeck)
  );
}
