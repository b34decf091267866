import { describe, expect, test } from 'vitest';
import { reduceRound } from '../../../core/round/reduce.ts';
import type { RoundEvent } from '../../../core/round/state.ts';
import { farm, tile } from '../make/round.ts';
import {
  everywhere,
  OFFER_ID,
  outcome,
  type Row,
  roundAt,
  STATES,
  TREATMENT_ID,
} from '../make/round-states.ts';

const NOT_GIVEN = { kind: 'not-given' } as const;
const WRONG_ANIMAL = { kind: 'wrong-animal', animalId: 'bella' } as const;

function correction(what: typeof NOT_GIVEN | typeof WRONG_ANIMAL): RoundEvent {
  return { type: 'corrected', correction: { id: 'c', treatmentId: TREATMENT_ID, what, atMs: 0, by: 'Kim' } };
}

/** Every event a person can send, and what it comes to in every state, one second after. */
const TABLE: readonly (readonly [name: string, event: RoundEvent, row: Row])[] = [
  [
    'proving the jug on a bench that shows nothing',
    { type: 'prove-on-bench', jugId: 'jug-7' },
    everywhere('refused wrong-state', { 'prove-jug': 'refused bench-not-ready' }),
  ],
  [
    'taking a jug',
    { type: 'take-jug', jugId: 'jug-7' },
    {
      'no-jug': 'prove-jug',
      'prove-jug': 'ignored',
      'visit: empty': 'prove-jug',
      'visit: weight only': 'prove-jug',
      'visit: who only': 'prove-jug',
      'which-animal': 'prove-jug',
      'cautions: stop': 'prove-jug',
      'cautions: ask': 'prove-jug',
      offered: 'prove-jug + lapse jug-changed',
      logging: 'refused wrong-state',
      logged: 'prove-jug',
    },
  ],
  [
    'taking a jug that does not exist',
    { type: 'take-jug', jugId: 'jug-0' },
    everywhere('refused no-such-jug', { logging: 'refused wrong-state' }),
  ],
  [
    'proving the jug',
    { type: 'prove-jug', jugId: 'jug-7', deliberate: false },
    everywhere('refused wrong-state', { 'prove-jug': 'visit' }),
  ],
  [
    'proving another jug than the one taken',
    { type: 'prove-jug', jugId: 'jug-8', deliberate: true },
    everywhere('refused wrong-state', { 'prove-jug': 'refused not-this-jug' }),
  ],
  [
    'putting the jug down',
    { type: 'put-jug-down' },
    everywhere('no-jug', {
      'no-jug': 'refused wrong-state',
      offered: 'no-jug + lapse jug-changed',
      logging: 'refused wrong-state',
    }),
  ],
  [
    'tapping the tile of another animal',
    tile('bella'),
    {
      'no-jug': 'refused wrong-state',
      'prove-jug': 'refused wrong-state',
      'visit: empty': 'visit',
      'visit: weight only': 'offered',
      'visit: who only': 'which-animal',
      'which-animal': 'offered',
      'cautions: stop': 'which-animal',
      'cautions: ask': 'which-animal',
      offered: 'which-animal + lapse identity-doubted',
      logging: 'refused wrong-state',
      logged: 'visit',
    },
  ],
  ['tapping a tile of no animal', tile('nobody'), everywhere('refused no-such-animal')],
  [
    'accepting the doubted weight',
    { type: 'accept', code: 'weight-far-from-last' },
    everywhere('refused wrong-state', {
      'cautions: stop': 'refused no-such-caution',
      'cautions: ask': 'offered',
    }),
  ],
  [
    'accepting a stop',
    { type: 'accept', code: 'not-approved' },
    everywhere('refused wrong-state', {
      'cautions: stop': 'refused cannot-pass-stop',
      'cautions: ask': 'refused no-such-caution',
    }),
  ],
  [
    'giving the offer',
    { type: 'give', offerId: OFFER_ID, outcome: 'whole' },
    everywhere('refused offer-ended', { offered: 'logging + store anna' }),
  ],
  [
    'giving an offer nobody made',
    { type: 'give', offerId: 'no-such', outcome: 'whole' },
    everywhere('refused offer-ended'),
  ],
  [
    'skipping',
    { type: 'skip', reason: 'later' },
    {
      'no-jug': 'refused wrong-state',
      'prove-jug': 'refused wrong-state',
      'visit: empty': 'ignored + skip nobody',
      'visit: weight only': 'visit + skip nobody',
      'visit: who only': 'visit + skip anna',
      'which-animal': 'visit + skip nobody',
      'cautions: stop': 'visit + skip dot',
      'cautions: ask': 'visit + skip cora',
      offered: 'visit + skip anna',
      logging: 'refused wrong-state',
      logged: 'refused wrong-state',
    },
  ],
  [
    'answering an offer that does not wait',
    { type: 'answer', offerId: OFFER_ID, given: true },
    everywhere('refused offer-ended'),
  ],
  ['correcting to not given', correction(NOT_GIVEN), everywhere('ignored', { logged: 'offered' })],
  ['correcting to the wrong animal', correction(WRONG_ANIMAL), everywhere('ignored', { logged: 'visit' })],
  ['asking for the next', { type: 'next' }, everywhere('refused wrong-state', { logged: 'visit' })],
];

describe.each(TABLE)('%s', (_, event, row) => {
  test.each(STATES.map((state) => [state, row[state]] as const))('at %s: %s', (state, expected) => {
    const before = roundAt(state);
    expect(outcome(before, reduceRound(before, event, farm(1000)))).toBe(expected);
  });
});
