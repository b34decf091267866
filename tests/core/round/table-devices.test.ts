import { describe, expect, test } from 'vitest';
import { WEIGHT_LIFE_MS } from '../../../core/round/offer.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import type { RoundEvent } from '../../../core/round/state.ts';
import { farm, wand, weighed } from '../make/round.ts';
import { everywhere, outcome, type Row, roundAt, STATES, STORED } from '../make/round-states.ts';

/** Every event of devices, disk and clock, and what it comes to in every state, some time after. */
const TABLE: readonly (readonly [name: string, event: RoundEvent, afterMs: number, row: Row])[] = [
  [
    'the tag of the same animal again',
    wand('anna'),
    1000,
    {
      'no-jug': 'refused wrong-state',
      'prove-jug': 'refused wrong-state',
      'visit: empty': 'visit',
      'visit: weight only': 'offered',
      'visit: who only': 'visit',
      'which-animal': 'refused wrong-state',
      'cautions: stop': 'which-animal',
      'cautions: ask': 'which-animal',
      offered: 'ignored',
      logging: 'refused wrong-state',
      logged: 'ignored',
    },
  ],
  [
    'the tag of another animal',
    wand('bella'),
    1000,
    {
      'no-jug': 'refused wrong-state',
      'prove-jug': 'refused wrong-state',
      'visit: empty': 'visit',
      'visit: weight only': 'offered',
      'visit: who only': 'which-animal',
      'which-animal': 'refused wrong-state',
      'cautions: stop': 'which-animal',
      'cautions: ask': 'which-animal',
      offered: 'which-animal + lapse identity-doubted',
      logging: 'refused wrong-state',
      logged: 'visit',
    },
  ],
  [
    'a tag that several animals are recorded with',
    { type: 'doubtful-tag', animalIds: ['anna', 'bella'] },
    1000,
    {
      'no-jug': 'refused wrong-state',
      'prove-jug': 'refused wrong-state',
      'visit: empty': 'which-animal',
      'visit: weight only': 'which-animal',
      'visit: who only': 'which-animal',
      'which-animal': 'refused wrong-state',
      'cautions: stop': 'which-animal',
      'cautions: ask': 'which-animal',
      offered: 'which-animal + lapse identity-doubted',
      logging: 'refused wrong-state',
      logged: 'ignored',
    },
  ],
  [
    'an animal stepping on',
    { type: 'stepped-on' },
    1000,
    {
      'no-jug': 'ignored',
      'prove-jug': 'ignored',
      'visit: empty': 'visit',
      'visit: weight only': 'visit',
      'visit: who only': 'ignored',
      'which-animal': 'visit',
      'cautions: stop': 'visit',
      'cautions: ask': 'visit',
      offered: 'visit + lapse new-animal',
      logging: 'logging',
      logged: 'visit',
    },
  ],
  [
    'a weight being held',
    weighed(41, 1000),
    1000,
    {
      'no-jug': 'ignored',
      'prove-jug': 'ignored',
      'visit: empty': 'ignored',
      'visit: weight only': 'visit',
      'visit: who only': 'offered',
      'which-animal': 'which-animal',
      'cautions: stop': 'cautions',
      'cautions: ask': 'cautions',
      offered: 'cautions + lapse reweighed',
      logging: 'ignored',
      logged: 'ignored',
    },
  ],
  [
    'the animal stepping off',
    { type: 'stepped-off' },
    1000,
    {
      'no-jug': 'ignored',
      'prove-jug': 'ignored',
      'visit: empty': 'ignored',
      'visit: weight only': 'visit',
      'visit: who only': 'visit',
      'which-animal': 'which-animal',
      'cautions: stop': 'cautions',
      'cautions: ask': 'cautions',
      offered: 'offered',
      logging: 'logging',
      logged: 'logged',
    },
  ],
  [
    'the platform going blank',
    { type: 'platform-blank' },
    1000,
    {
      'no-jug': 'ignored',
      'prove-jug': 'ignored',
      'visit: empty': 'ignored',
      'visit: weight only': 'visit',
      'visit: who only': 'visit',
      'which-animal': 'which-animal',
      'cautions: stop': 'visit',
      'cautions: ask': 'visit',
      offered: 'offered',
      logging: 'logging',
      logged: 'logged',
    },
  ],
  ['a treatment being on disk', STORED, 1000, everywhere('ignored', { logging: 'logged' })],
  [
    'news of the jugs that changes nothing',
    { type: 'world-changed', what: 'jugs' },
    1000,
    everywhere('ignored'),
  ],
  [
    'other syringes',
    { type: 'world-changed', what: 'syringes' },
    1000,
    everywhere('ignored', { offered: 'cautions + lapse syringes-changed' }),
  ],
  [
    'other rules',
    { type: 'world-changed', what: 'rules' },
    1000,
    everywhere('ignored', { offered: 'cautions + lapse rules-changed' }),
  ],
  ['a second passing', { type: 'tick' }, 1000, everywhere('ignored')],
  [
    'the life of a weight passing',
    { type: 'tick' },
    WEIGHT_LIFE_MS,
    everywhere('ignored', {
      'visit: weight only': 'visit',
      'which-animal': 'visit',
      'cautions: stop': 'visit',
      'cautions: ask': 'visit',
      offered: 'visit + lapse timed-out',
    }),
  ],
];

describe.each(TABLE)('%s', (_, event, afterMs, row) => {
  test.each(STATES.map((state) => [state, row[state]] as const))('at %s: %s', (state, expected) => {
    const before = roundAt(state);
    expect(outcome(before, reduceRound(before, event, farm(afterMs)))).toBe(expected);
  });
});
