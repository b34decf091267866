import { reduceRound } from '../../../core/round/reduce.ts';
import {
  FRESH_ROUND,
  type Round,
  type RoundEffect,
  type RoundEvent,
  type RoundStep,
} from '../../../core/round/state.ts';
import {
  farm,
  offeredRound,
  offerOf,
  phaseAt,
  play,
  storedBy,
  TO_VISIT,
  toWeighed,
  wand,
  weighed,
} from './round.ts';

/** The places a round is put in before each event of the tables. */
export const STATES = [
  'no-jug',
  'prove-jug',
  'visit: empty',
  'visit: weight only',
  'visit: who only',
  'which-animal',
  'cautions: stop',
  'cautions: ask',
  'offered',
  'logging',
  'logged',
] as const;
export type StateName = (typeof STATES)[number];

const ON: RoundEvent = { type: 'stepped-on' };

function logging(): { round: Round; stored: RoundEvent } {
  const offered = offeredRound();
  const step = reduceRound(
    offered,
    { type: 'give', offerId: offerOf(offered).id, outcome: 'whole' },
    farm(10),
  );
  const [treatment] = storedBy([step]);
  if (treatment === undefined) throw new Error('giving stored nothing');
  return { round: step.round, stored: { type: 'stored', treatment } };
}

/** A round in the place named, reached by events alone. */
export function roundAt(name: StateName): Round {
  switch (name) {
    case 'no-jug':
      return FRESH_ROUND;
    case 'prove-jug':
      return play(FRESH_ROUND, TO_VISIT.slice(0, 1));
    case 'visit: empty':
      return play(FRESH_ROUND, TO_VISIT);
    case 'visit: weight only':
      return play(FRESH_ROUND, [...TO_VISIT, ON, weighed()]);
    case 'visit: who only':
      return play(FRESH_ROUND, [...TO_VISIT, wand('anna'), ON]);
    case 'which-animal':
      return play(FRESH_ROUND, [...TO_VISIT, wand('anna'), ON, wand('bella'), weighed()]);
    case 'cautions: stop':
      return play(FRESH_ROUND, toWeighed('dot'));
    case 'cautions: ask':
      return play(FRESH_ROUND, toWeighed('cora'));
    case 'offered':
      return offeredRound();
    case 'logging':
      return logging().round;
    case 'logged': {
      const { round, stored } = logging();
      return reduceRound(round, stored, farm(20)).round;
    }
  }
}

/** The offer that is given in the states from `offered` on; every build makes the same one. */
export const OFFER_ID = offerOf(offeredRound()).id;
/** The event that says the treatment of {@link OFFER_ID} is on disk. */
export const STORED: RoundEvent = logging().stored;
/** The id of that treatment. */
export const TREATMENT_ID = phaseAt(roundAt('logged'), 'logged').treatment.id;

function effectInWords(effect: RoundEffect): string {
  switch (effect.do) {
    case 'store':
      return `store ${effect.treatment.offer.animal.id}`;
    case 'record-skip':
      return `skip ${effect.animalId ?? 'nobody'}`;
    case 'record-lapse':
      return `lapse ${effect.reason}`;
    case 'record-not-given':
      return `not given ${effect.offer.animal.id}`;
  }
}

/** A step in one line: "ignored", "refused why", or where it led and what it had done. */
export function outcome(before: Round, step: RoundStep): string {
  const effects = step.effects.map(effectInWords);
  const same = JSON.stringify(step.round) === JSON.stringify(before);
  const where = same ? 'ignored' : step.round.phase.step;
  const first = step.refused === null ? where : `refused ${step.refused}${same ? '' : `, now ${where}`}`;
  return [first, ...effects].join(' + ');
}

/** What one event comes to in every state. */
export type Row = Readonly<Record<StateName, string>>;

/** One outcome everywhere, but for the states named. */
export function everywhere(usual: string, but: Partial<Record<StateName, string>> = {}): Row {
  const usualRow = Object.fromEntries(STATES.map((state) => [state, usual])) as Record<StateName, string>;
  return { ...usualRow, ...but };
}
