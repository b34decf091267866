import { describe, expect, test } from 'vitest';
import { HOUR_MS } from '../../../core/moment.ts';
import { loadMemory } from '../../../server/barn/memory.ts';
import { animalPage } from '../../../server/view/animal-page.ts';
import { stateView } from '../../../server/view/state-view.ts';
import { quietStanding } from '../make/quiet.ts';
import { bringToOffer, GOAT, type TestBarn, testBarn } from '../make/test-barn.ts';

const MERGE = {
  type: 'merge-animals',
  keptId: 'goat-2',
  goneId: GOAT.id,
  choices: { name: 'kept' },
} as const;
const PART = { type: 'part-animals', goneId: GOAT.id } as const;
const herdOf = (test: TestBarn) => test.barn.context.memory;
const afterRestart = (test: TestBarn) => loadMemory(test.store, herdOf(test).settings);
const page = (test: TestBarn, id: string) => animalPage(test.barn.context, id);

/** A barn where the goat was dosed under its tag's record, and stepped off. */
function dosed(): TestBarn {
  const barn = testBarn();
  barn.send({ type: 'give', offerId: bringToOffer(barn), outcome: 'whole' });
  barn.weigh(0, 2000);
  barn.send({ type: 'next' });
  return barn;
}

/** Brings the animal of a number to the platform again; answers the cautions shown. */
function cautionsOf(barn: TestBarn, animalId: string): string[] {
  barn.weigh(0, 1000);
  barn.send({ type: 'pick-animal', animalId });
  barn.weigh(15_400, 4000);
  const { phase } = herdOf(barn).round;
  return phase.step === 'cautions' && 'cautions' in phase.decision
    ? phase.decision.cautions.map(({ code }) => code)
    : [phase.step];
}

describe('two records of one animal', () => {
  test('merged, the dose under the one stops a dose under the other', () => {
    const apart = dosed();
    expect(cautionsOf(apart, 'goat-2')).not.toContain('same-active-today');
    const barn = dosed();
    expect(barn.send(MERGE)).toMatchObject({ ok: true });
    expect(herdOf(barn).animals.map(({ id, tag }) => [id, tag])).toEqual([['goat-2', GOAT.tag]]);
    barn.clock.pass(HOUR_MS);
    expect(cautionsOf(barn, 'goat-2')).toContain('same-active-today');
  });

  test('merged, the board, the page and the last weight are of both; memory is what the disk says', () => {
    const barn = dosed();
    const standing = quietStanding(barn.barn.context);
    const hold = (id: string) =>
      stateView(barn.barn.context, standing).board.find((row) => row.animal === id);
    const before = hold(GOAT.id);
    expect(before?.meat).toMatchObject({ treatment: expect.any(String) });
    const weight = herdOf(barn).animals.find(({ id }) => id === GOAT.id)?.lastWeight;
    barn.send({ type: 'note-animal', animalId: GOAT.id, note: 'lame' });
    barn.send(MERGE);
    expect(hold('goat-2')).toMatchObject({ meat: before?.meat, milk: before?.milk });
    expect(page(barn, 'goat-2')).toMatchObject({
      treatments: [{ active: 'levamisole hydrochloride' }],
      notes: [{ note: 'lame' }],
      merged: [{ id: GOAT.id, name: GOAT.name, by: 'Wren' }],
    });
    expect(page(barn, GOAT.id)).toMatchObject({ life: 'merged', mergedInto: { id: 'goat-2' } });
    expect(herdOf(barn).animals[0]?.lastWeight).toEqual(weight);
    for (const part of ['animals', 'gone', 'earlier', 'keepingBack', 'recent'] as const)
      expect(afterRestart(barn)[part]).toEqual(herdOf(barn)[part]);
  });

  test('parted, each has its own again, and both facts are kept', () => {
    const barn = dosed();
    const before = herdOf(barn);
    barn.send(MERGE);
    expect(barn.send(PART)).toMatchObject({ ok: true });
    for (const part of ['animals', 'gone', 'earlier', 'keepingBack'] as const)
      expect(herdOf(barn)[part]).toEqual(before[part]);
    expect(barn.send(PART)).toMatchObject({ code: 'not-merged' });
    expect(barn.send(MERGE)).toMatchObject({ ok: true });
  });

  test.each([
    ['one record', { ...MERGE, goneId: 'goat-2' }, 'not-one-animal'],
    ['a stranger', { ...MERGE, goneId: 'nobody' }, 'no-such-animal'],
    ['what nobody decided', { ...MERGE, choices: {} }, 'merge-undecided'],
  ] as const)('are not merged: %s', (_what, wish, code) => {
    const barn = dosed();
    const before = herdOf(barn).animals;
    expect(barn.send(wish)).toMatchObject({ ok: false, code });
    expect(herdOf(barn).animals).toBe(before);
  });

  test('of two species are not merged', () => {
    const barn = testBarn();
    barn.send({ type: 'enrol', name: 'S1', species: 'sheep', class: 'female', tag: null, inMilk: false });
    const sheep = herdOf(barn).animals.find(({ name }) => name === 'S1')?.id ?? '';
    expect(barn.send({ ...MERGE, goneId: sheep })).toMatchObject({ code: 'not-one-animal' });
  });

  test('are not merged while a dose for one of them waits', () => {
    const barn = testBarn();
    bringToOffer(barn);
    expect(barn.send(MERGE)).toMatchObject({ code: 'in-round' });
    barn.send({ type: 'jug-discard', jugId: 'jug-1' });
    expect(herdOf(barn).round.unanswered).toHaveLength(1);
    expect(barn.send(MERGE)).toMatchObject({ code: 'in-round' });
  });
});
