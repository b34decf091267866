import { medicineById } from '../medicine/formulary.ts';
import { hasRival, type Jug, mayBeInUse } from '../mixing/jug.ts';
import { proveOnBench } from '../mixing/prove.ts';
import { unreachable } from '../unreachable.ts';
import { lookAgain, reduceGiving } from './giving.ts';
import { reducePlatform } from './platform.ts';
import { handNotes, type Proof } from './proof.ts';
import type { Round, RoundEvent, RoundRefusal, RoundStep, RoundWorld } from './state.ts';
import { advanceVisit, andThen, go, ignore, lapse, refuse } from './visit.ts';

/**
 * Takes one step of the round.
 *
 * Pure: the same round, event and world always give the same step. Events that mean nothing where the round stands
 * are ignored when they come from devices, and refused with a reason when they come from people.
 */
export function reduceRound(round: Round, event: RoundEvent, world: RoundWorld): RoundStep {
  switch (event.type) {
    case 'take-jug':
      return takeJug(round, event.jugId, world);
    case 'prove-jug':
      return proveJug(round, event.jugId, event.deliberate, world);
    case 'prove-on-bench':
      return proveByWeight(round, event.jugId, world);
    case 'put-jug-down':
      if (round.phase.step === 'no-jug') return refuse(round, 'wrong-state');
      if (round.phase.step === 'logging') return refuse(round, 'wrong-state');
      return andThen(lapse(round, 'jug-changed'), putDown);
    case 'follow-up':
      return followUp(round, event.jugId, world);
    case 'world-changed':
      return worldChanged(round, event.what, world);
    case 'identified':
    case 'doubtful-tag':
    case 'stepped-on':
    case 'held':
    case 'stepped-off':
    case 'platform-blank':
      return reducePlatform(round, event, world);
    case 'accept':
    case 'give':
    case 'skip':
    case 'answer':
    case 'corrected':
    case 'next':
    case 'stored':
    case 'tick':
      return reduceGiving(round, event, world);
    default:
      return unreachable(event);
  }
}

function takeJug(round: Round, jugId: string, world: RoundWorld): RoundStep {
  if (round.phase.step === 'logging') return refuse(round, 'wrong-state');
  const jug = world.jugs.find((candidate) => candidate.id === jugId);
  if (jug === undefined) return refuse(round, 'no-such-jug');
  if (!mayBeInUse(jug, world.now.wallMs, world.clockTrusted)) return refuse(round, 'jug-out-of-life');
  return andThen(lapse(round, 'jug-changed'), (after) =>
    go({ ...after, proof: null, backTo: null }, { step: 'prove-jug', jugId, visit: null }),
  );
}

function putDown(round: Round): RoundStep {
  return go({ ...round, proof: null, backTo: null }, { step: 'no-jug' });
}

/** Goes on with the animal just dosed: with the same jug for the rest of a part, with another for an extra. */
function followUp(round: Round, jugId: string, world: RoundWorld): RoundStep {
  const { phase } = round;
  if (phase.step !== 'logged') return refuse(round, 'wrong-state');
  const visit = { ...phase.visit, dosed: true };
  if (jugId === phase.jugId) return advanceVisit(round, jugId, visit, [], world);
  const inHand = world.jugs.find((candidate) => candidate.id === phase.jugId);
  const jug = world.jugs.find((candidate) => candidate.id === jugId);
  if (jug === undefined) return refuse(round, 'no-such-jug');
  if (!mayBeInUse(jug, world.now.wallMs, world.clockTrusted)) return refuse(round, 'jug-out-of-life');
  const extras = medicineById(world.formulary, inHand?.medicineId ?? '')?.extras ?? [];
  if (!extras.some(({ medicineId }) => medicineId === jug.medicineId)) return refuse(round, 'not-an-extra');
  const backTo = round.backTo ?? phase.jugId;
  return go({ ...round, proof: null, backTo }, { step: 'prove-jug', jugId, visit });
}

/** The jug being asked about, or why it is not. */
function askedAbout(round: Round, jugId: string, world: RoundWorld): Jug | RoundRefusal {
  if (round.phase.step !== 'prove-jug') return 'wrong-state';
  if (round.phase.jugId !== jugId) return 'not-this-jug';
  const jug = world.jugs.find((candidate) => candidate.id === jugId);
  if (jug === undefined) return 'no-such-jug';
  return mayBeInUse(jug, world.now.wallMs, world.clockTrusted) ? jug : 'jug-out-of-life';
}

function proveJug(round: Round, jugId: string, deliberate: boolean, world: RoundWorld): RoundStep {
  const jug = askedAbout(round, jugId, world);
  if (typeof jug === 'string') return refuse(round, jug);
  const rival = hasRival(jug, world.jugs, world.now.wallMs, world.clockTrusted);
  if (!deliberate && (rival || weighsAsAnother(jug, world))) return refuse(round, 'needs-held-press');
  return proved(round, jug, deliberate ? 'held' : 'tap', world);
}

/** Whether another jug in service stands on the bench, going by its weight. */
function weighsAsAnother(jug: Jug, { onBench, jugs, now, clockTrusted }: RoundWorld): boolean {
  if (typeof onBench === 'string') return false;
  return proveOnBench(jug, jugs, onBench, now.wallMs, clockTrusted).verdict === 'weighs-as-another';
}

const NOT_PROVED = {
  'weight-unknown': 'jug-weight-unknown',
  'nothing-there': 'no-jug-on-scale',
  'weighs-otherwise': 'jug-weighs-otherwise',
  'weighs-as-another': 'jug-weighs-otherwise',
  'fits-two': 'jugs-weigh-alike',
} as const;

function proveByWeight(round: Round, jugId: string, world: RoundWorld): RoundStep {
  const jug = askedAbout(round, jugId, world);
  if (typeof jug === 'string') return refuse(round, jug);
  if (typeof world.onBench === 'string') return refuse(round, world.onBench);
  const { verdict } = proveOnBench(jug, world.jugs, world.onBench, world.now.wallMs, world.clockTrusted);
  return verdict === 'fits' ? proved(round, jug, 'bench', world) : refuse(round, NOT_PROVED[verdict]);
}

function proved(round: Round, jug: Jug, how: Proof['how'], world: RoundWorld): RoundStep {
  const { phase } = round;
  const told = handNotes(jug.medicineId, world.formulary);
  const inHand = { ...round, proof: { how, atMs: world.now.wallMs, told } };
  const carried = phase.step === 'prove-jug' ? phase.visit : null;
  if (carried !== null) return advanceVisit(inHand, jug.id, carried, [], world);
  // An animal that stands there already is the first of the round.
  const weight = world.standing?.weight ?? null;
  const visit = { who: null, weight, onDeck: world.standing !== null };
  return go(inHand, { step: 'visit', jugId: jug.id, visit });
}

function worldChanged(
  round: Round,
  what: Extract<RoundEvent, { type: 'world-changed' }>['what'],
  world: RoundWorld,
): RoundStep {
  const { phase } = round;
  if (what === 'jugs') return jugsChanged(round, world);
  // An offer that stands may be logged yet: a dose swallowed must not be lost.
  if (what === 'disk' || what === 'clock') return lookAgain(round, world);
  switch (phase.step) {
    case 'cautions':
      // What was accepted was another dose: its numbers may have changed with the syringe or the rule.
      return advanceVisit(round, phase.jugId, phase.visit, [], world);
    case 'offered':
      return andThen(lapse(round, what === 'syringes' ? 'syringes-changed' : 'rules-changed'), (after) =>
        advanceVisit(after, phase.jugId, phase.visit, [], world),
      );
    default:
      return ignore(round);
  }
}

/** A jug poured away ends the round with it; a new rival takes back the proof that this jug is the one in hand. */
function jugsChanged(round: Round, world: RoundWorld): RoundStep {
  const { phase } = round;
  if (phase.step === 'no-jug' || phase.step === 'logging') return ignore(round);
  const jug = world.jugs.find((candidate) => candidate.id === phase.jugId);
  if (jug === undefined || jug.discardedAtMs !== null) {
    return andThen(lapse(round, 'jug-changed'), putDown);
  }
  if (phase.step === 'prove-jug' || !hasRival(jug, world.jugs, world.now.wallMs, world.clockTrusted))
    return ignore(round);
  return andThen(lapse(round, 'jug-changed'), (after) =>
    go({ ...after, proof: null }, { step: 'prove-jug', jugId: phase.jugId, visit: null }),
  );
}
