import { beforeEach, describe, expect, test } from 'vitest';
import { bringToOffer, GOAT, standingOffer, type TestBarn, testBarn } from '../make/test-barn.ts';

/** Two goats of one electronic tag, as two kiosks may have enrolled them apart. */
describe('a tag that two animals are recorded with', () => {
  const tag = GOAT.tag ?? '';
  let barn: TestBarn;
  beforeEach(() => {
    barn = testBarn();
    barn.send({ type: 'take-jug', jugId: 'jug-1' });
    barn.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: true });
    share();
  });

  function share(): void {
    const { context } = barn.barn;
    context.memory = {
      ...context.memory,
      animals: context.memory.animals.map((animal) => ({ ...animal, tag })),
    };
  }
  const phase = () => barn.barn.context.memory.round.phase;
  const asks = { step: 'which-animal', between: expect.arrayContaining(['goat-1', 'goat-2']) };

  test('names neither, whether it is read before the step-on or on the platform', () => {
    expect(barn.send({ type: 'read-tag', tag })).toMatchObject({ ok: true });
    expect(phase()).toMatchObject(asks);
    barn.weigh(0, 1500);
    barn.weigh(15_400, 4000);
    barn.send({ type: 'read-tag', tag });
    expect(phase()).toMatchObject({ ...asks, visit: { who: null } });
    barn.send({ type: 'pick-animal', animalId: 'goat-2' });
    expect(phase()).not.toMatchObject({ step: 'which-animal' });
    expect(phase()).toMatchObject({ visit: { who: { animalId: 'goat-2' } } });
  });

  test('changes nothing where one of the two was chosen by a person', () => {
    barn.weigh(0, 1500);
    barn.weigh(15_400, 4000);
    barn.send({ type: 'pick-animal', animalId: 'goat-1' });
    const before = phase();
    barn.send({ type: 'read-tag', tag });
    expect(phase()).toEqual(before);
  });

  test('ends an offer that rests on it', () => {
    const alone = testBarn();
    barn = alone;
    bringToOffer(alone);
    expect(standingOffer(alone).animal.id).toBe('goat-1');
    share();
    alone.send({ type: 'read-tag', tag });
    expect(phase()).toMatchObject(asks);
  });

  test('leaves the offer of a chosen animal that has stepped off: it may be read where it is drenched', () => {
    barn.weigh(0, 1500);
    barn.weigh(15_400, 4000);
    barn.send({ type: 'pick-animal', animalId: 'goat-1' });
    barn.weigh(0, 1500);
    const { id } = standingOffer(barn);
    barn.send({ type: 'read-tag', tag });
    expect(standingOffer(barn).id).toBe(id);
  });
});
