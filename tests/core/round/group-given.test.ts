import { describe, expect, test } from 'vitest';
import type { Animal } from '../../../core/herd/animal.ts';
import { kilograms } from '../../../core/quantity/mass.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { earlierDoses, pairUp } from '../../../core/round/day-book.ts';
import { type GroupGiven, groupTreatment } from '../../../core/round/group-given.ts';
import { FRESH_ROUND, type Round, type RoundWorld } from '../../../core/round/state.ts';
import { makeAnimal } from '../make/animal.ts';
import { makeApproval } from '../make/approval.ts';
import { makeEarlier } from '../make/earlier.ts';
import { makeJug } from '../make/jug.ts';
import { play, TO_VISIT } from '../make/round.ts';
import { roundAt } from '../make/round-states.ts';
import { hoursAgo } from '../make/time.ts';
import { later } from '../make/world.ts';

const goat = (id: string, kg: number, over: Partial<Animal> = {}): Animal =>
  makeAnimal({ id, name: id, tag: null, lastWeight: { mass: kilograms(kg), atMs: hoursAgo(48) }, ...over });
const HERD = [goat('doe', 42), goat('dam', 38), goat('nan', 36)];
const farm = (over: Partial<RoundWorld> = {}): RoundWorld => later(5000, { animals: HERD, ...over });
const IN_HAND: Round = play(FRESH_ROUND, TO_VISIT, () => farm());
/** 42 kg at 12 mg/kg of 49.45 mg/mL is 10.19 mL: 10.2 on marks of 0.2. */
const GIVEN: GroupGiven = {
  jugId: 'jug-7',
  animalIds: ['doe', 'dam', 'nan'],
  animalId: 'dam',
  volumeMl: 10.2,
  accepted: [],
};

function written(over: Partial<GroupGiven> = {}, world = farm(), round = IN_HAND) {
  const treatment = groupTreatment({ ...GIVEN, ...over }, round, world);
  if (typeof treatment === 'string') throw new Error(treatment);
  return treatment;
}
const refused = (over: Partial<GroupGiven>, world = farm(), round = IN_HAND) =>
  groupTreatment({ ...GIVEN, ...over }, round, world);

describe('a dose given as the dose of a group', () => {
  test('is the volume of the heaviest, and says so', () => {
    const { offer, outcome } = written();
    expect(offer.dose.plan.total).toEqual(millilitres(10.2));
    expect(offer.group).toEqual({
      heaviestId: 'doe',
      heaviestName: 'doe',
      heaviest: kilograms(42),
      weighedAtMs: hoursAgo(48),
      members: 3,
    });
    expect(outcome).toBe('whole');
    expect(offer.proof?.how).toBe('tap');
  });

  test('tells what this animal gets of it, by its own last weight and its doubt', () => {
    const { offer } = written();
    expect(offer.weight.held.mass).toEqual(kilograms(38));
    expect(offer.dose.delivered.value).toBeCloseTo((10.2 * makeJug().strength.value) / 38, 6);
    expect(offer.dose.delivered.high).toBeLessThan(offer.regimen.ceiling.value);
  });

  test('stays the same for those that follow when the heaviest has had it', () => {
    const earlier = earlierDoses(pairUp([written({ animalId: 'doe' })], []));
    expect(written({}, farm({ earlier })).offer.dose.plan.total.value).toBe(10.2);
  });

  test.each<[string, ReturnType<typeof refused>, Partial<GroupGiven>, Partial<RoundWorld>]>([
    ['a jug that is not there', 'no-such-jug', { jugId: 'jug-0' }, {}],
    ['an animal that is not of the group', 'no-such-animal', { animalIds: ['doe', 'nan'] }, {}],
    ['another volume than the group’s: a decimal slip', 'group-changed', { volumeMl: 102 }, {}],
    ['the volume of a lighter one', 'group-changed', { volumeMl: 9.2 }, {}],
    [
      'a second dose of the same animal',
      'cannot-pass-stop',
      {},
      { earlier: [makeEarlier(1, { animalId: 'dam' })] },
    ],
    [
      'a second dose while the clock is not trusted, even by an accepted ask',
      'cannot-pass-stop',
      { accepted: ['clock-untrusted'] },
      { earlier: [makeEarlier(0, { animalId: 'dam' })], clockTrusted: false },
    ],
    ['a rule nobody approved', 'cannot-pass-stop', {}, { approvals: [] }],
    [
      'a jug with less in it than the dose',
      'cannot-pass-stop',
      {},
      { jugs: [makeJug({ drawn: millilitres(936.3) })] },
    ],
    [
      'an animal of the group that was never weighed',
      'group-changed',
      {},
      { animals: [goat('doe', 42), goat('dam', 38), goat('nan', 36, { lastWeight: null })] },
    ],
    [
      'a weight past its days',
      'group-changed',
      {},
      {
        animals: [
          goat('doe', 42),
          goat('dam', 38, { lastWeight: { mass: kilograms(38), atMs: hoursAgo(31 * 24) } }),
          goat('nan', 36),
        ],
      },
    ],
    [
      'a group whose lightest would pass the ceiling',
      'group-changed',
      {},
      { animals: [goat('doe', 42), goat('dam', 38), goat('nan', 12)] },
    ],
    [
      'a group of two species',
      'group-changed',
      {},
      { animals: [goat('doe', 42, { species: 'sheep' }), goat('dam', 38), goat('nan', 36)] },
    ],
  ])('%s is refused', (_, why, over, world) => {
    expect(refused(over, farm(world))).toBe(why);
  });

  test('an ask is accepted for this animal, or nothing is written', () => {
    const world = farm({ animals: [goat('doe', 42), goat('dam', 38, { inMilk: true }), goat('nan', 36)] });
    expect(refused({}, world)).toBe('ask-open');
    const { accepted } = written({ accepted: ['milk-time-unknown'] }, world);
    expect(accepted.map(({ code }) => code)).toEqual(['milk-time-unknown']);
  });

  test('the jug must be proved in hand, and nobody stand at the platform', () => {
    expect(refused({}, farm(), FRESH_ROUND)).toBe('jug-not-in-hand');
    for (const state of ['prove-jug', 'visit: weight only', 'visit: who only', 'offered', 'logging'] as const)
      expect(refused({}, farm(), roundAt(state))).toBe('jug-not-in-hand');
    expect(written({}, farm(), roundAt('logged')).offer.animal.id).toBe('dam');
    const other = farm({ jugs: [makeJug(), makeJug({ id: 'jug-8', number: 8 })] });
    expect(refused({ jugId: 'jug-8' }, other)).toBe('jug-not-in-hand');
  });

  test('an unanswered offer of the animal stops it', () => {
    const asked = roundAt('offered');
    const { phase } = asked;
    if (phase.step !== 'offered') throw new Error('no offer');
    const round = { ...IN_HAND, unanswered: [{ ...phase.offer, animal: goat('dam', 38) }] };
    expect(refused({}, farm(), round)).toBe('cannot-pass-stop');
  });

  test('a rule of another species approved does not serve', () => {
    expect(refused({}, farm({ approvals: [makeApproval({ regimenId: 'levamisole-sheep' })] }))).toBe(
      'cannot-pass-stop',
    );
  });
});
