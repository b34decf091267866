import { expect, test } from 'vitest';
import { nextHerding, type PracticeYard } from '../../../core/practice/herdsman.ts';
import { EMPTY_VISIT, type Phase } from '../../../core/round/state.ts';

const who = { animalId: 'a', via: 'wand', at: 0 } as const;
const visit = (over = {}): Phase => ({ step: 'visit', jugId: 'j', visit: { ...EMPTY_VISIT, ...over } });
const yard = (over: Partial<PracticeYard>): PracticeYard => ({
  phase: visit(),
  empty: true,
  standing: null,
  waiting: ['a', 'b'],
  ...over,
});

test('an animal is led on once a jug is in hand and the platform is empty, the next in the row', () => {
  expect(nextHerding(yard({}))).toEqual({ do: 'lead-on', animalId: 'a' });
  expect(nextHerding(yard({ phase: { step: 'no-jug' } }))).toBeNull();
  expect(nextHerding(yard({ empty: false }))).toBeNull();
  expect(nextHerding(yard({ waiting: [] }))).toBeNull();
});

test('it stands until its dose is logged or it is skipped, and is then led off', () => {
  const standing = { standing: 'a', empty: false };
  expect(nextHerding(yard({ ...standing, phase: visit({ who, onDeck: true }) }))).toBeNull();
  expect(nextHerding(yard({ ...standing, phase: visit({ onDeck: true }) }))).toEqual({ do: 'walk-off' });
  expect(nextHerding(yard({ ...standing, phase: { step: 'no-jug' } }))).toEqual({ do: 'walk-off' });
  // Its tag was read and it is on its way: nothing to do yet.
  expect(nextHerding(yard({ standing: 'a', phase: visit() }))).toBeNull();
});
