import { expect, test } from 'vitest';
import type { Phase, RoundEvent } from '../../../core/round/state.ts';
import { roundAt, STATES } from '../make/round-states.ts';

/** Every event of the round by the table it stands in; a new event does not compile until it is placed. */
const PLACED: Readonly<Record<RoundEvent['type'], 'people' | 'devices' | 'both'>> = {
  'take-jug': 'people',
  'prove-jug': 'people',
  'prove-on-bench': 'people',
  'put-jug-down': 'people',
  'follow-up': 'people',
  identified: 'both',
  'doubtful-tag': 'devices',
  accept: 'people',
  give: 'people',
  skip: 'people',
  answer: 'people',
  corrected: 'people',
  next: 'people',
  'stepped-on': 'devices',
  held: 'devices',
  'stepped-off': 'devices',
  'platform-blank': 'devices',
  stored: 'devices',
  'world-changed': 'devices',
  tick: 'devices',
};

/** Every step of the round; a new step does not compile until it is named. */
const STEPS: Readonly<Record<Phase['step'], true>> = {
  'no-jug': true,
  'prove-jug': true,
  visit: true,
  'which-animal': true,
  cautions: true,
  offered: true,
  logging: true,
  logged: true,
};

test('the tables start from every step there is', () => {
  const reached = new Set(STATES.map((state) => roundAt(state).phase.step));
  expect([...reached].sort()).toEqual(Object.keys(STEPS).sort());
});

test('every event has a table', () => {
  expect(Object.keys(PLACED)).toHaveLength(20);
});
