import { describe, expect, test } from 'vitest';
import { loadMemory } from '../../../server/barn/memory.ts';
import { animalPage } from '../../../server/view/animal-page.ts';
import { bringToOffer, GOAT, type TestBarn, testBarn } from '../make/test-barn.ts';

const memoryOf = (test: TestBarn) => test.barn.context.memory;
const lastWeight = (test: TestBarn) =>
  memoryOf(test).animals.find(({ id }) => id === GOAT.id)?.lastWeight?.mass.value;
const pageOf = (test: TestBarn) => {
  const page = animalPage(test.barn.context, GOAT.id);
  if (page === null) throw new Error('no page');
  return page;
};
const newest = (test: TestBarn) => {
  const [weighing] = pageOf(test).weighings;
  if (weighing === undefined) throw new Error('no weight');
  return weighing;
};

/** A goat of 15 kg that stood there with 33, and was let go. */
function doubtedBarn(): TestBarn {
  const barn = testBarn();
  barn.send({ type: 'take-jug', jugId: 'jug-1' });
  barn.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  barn.weigh(0, 1000);
  barn.send({ type: 'read-tag', tag: GOAT.tag ?? '' });
  barn.weigh(33_000, 4000);
  barn.send({ type: 'skip', reason: 'later' });
  return barn;
}

describe('a weight that is hard to believe', () => {
  test('is shown with its reason, and counts once somebody says that it is true', () => {
    const barn = doubtedBarn();
    expect(newest(barn)).toMatchObject({ doubt: 'pounds-for-kilograms', said: null });
    expect(lastWeight(barn)).toBe(15_000);
    barn.send({ type: 'say-weight', animalId: GOAT.id, weighingId: newest(barn).id, said: 'true' });
    expect(newest(barn)).toMatchObject({ grams: 33_000, doubt: null, said: 'true' });
    expect(lastWeight(barn)).toBe(33_000);
    expect(loadMemory(barn.store, memoryOf(barn).settings).animals).toEqual(memoryOf(barn).animals);
  });

  test('said to be wrong and then to be true after all counts again', () => {
    const barn = doubtedBarn();
    const { id: weighingId } = newest(barn);
    barn.send({ type: 'say-weight', animalId: GOAT.id, weighingId, said: 'wrong' });
    expect(newest(barn)).toMatchObject({ doubt: 'said-wrong' });
    barn.send({ type: 'say-weight', animalId: GOAT.id, weighingId, said: 'true' });
    expect(lastWeight(barn)).toBe(33_000);
  });
});

describe('a weight a dose went by', () => {
  test('said to be wrong is no last weight any more, after a restart and a further dose too; the treatment stands', () => {
    const barn = testBarn();
    const offerId = bringToOffer(barn, 15_400);
    barn.send({ type: 'give', offerId, outcome: 'whole' });
    expect(lastWeight(barn)).toBe(15_400);
    barn.send({ type: 'say-weight', animalId: GOAT.id, weighingId: newest(barn).id, said: 'wrong' });
    expect(lastWeight(barn)).toBe(15_000);
    expect(pageOf(barn).treatments).toHaveLength(1);
    expect(loadMemory(barn.store, memoryOf(barn).settings).animals).toEqual(memoryOf(barn).animals);
  });
});

describe('hours off feed', () => {
  test('are noted at a weight, and the weight itself stays as it was', () => {
    const barn = doubtedBarn();
    const before = newest(barn);
    barn.send({ type: 'weight-off-feed', animalId: GOAT.id, weighingId: before.id, hours: 12, round: false });
    expect(newest(barn)).toEqual({ ...before, hoursOffFeed: 12 });
    expect(memoryOf(barn).settings.offFeedSinceMs).toBeNull();
  });

  test('of the whole round go with every later weight, dosed or not, until it is fed again', () => {
    const barn = doubtedBarn();
    const { id: weighingId } = newest(barn);
    barn.send({ type: 'weight-off-feed', animalId: GOAT.id, weighingId, hours: 10, round: true });
    const offerId = bringToOffer(barn, 15_400);
    barn.send({ type: 'give', offerId, outcome: 'whole' });
    expect(newest(barn)).toMatchObject({ grams: 15_400 });
    expect(newest(barn).hoursOffFeed).toBeCloseTo(10, 0);
    barn.send({ type: 'weight-off-feed', animalId: GOAT.id, weighingId, hours: 0, round: true });
    expect(memoryOf(barn).settings.offFeedSinceMs).toBeNull();
  });

  test('of a weight the animal does not have are refused, and nothing is written', () => {
    const barn = testBarn();
    const wish = {
      type: 'weight-off-feed',
      animalId: GOAT.id,
      weighingId: '1:2',
      hours: 3,
      round: true,
    } as const;
    expect(barn.send(wish)).toMatchObject({ ok: false, code: 'no-such-weighing' });
    expect(memoryOf(barn).settings.offFeedSinceMs).toBeNull();
    expect(barn.store.weightWords.of(GOAT.id).hoursOffFeed.size).toBe(0);
  });
});
