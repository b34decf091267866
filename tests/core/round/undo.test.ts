import { describe, expect, test } from 'vitest';
import { earlierDoses, pairUp } from '../../../core/round/day-book.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import type { Correction } from '../../../core/round/treatment.ts';
import { makeCorrection } from '../make/book.ts';
import { farm, offerOf, phaseAt, play, wand, weighed } from '../make/round.ts';
import { OFFER_ID, roundAt } from '../make/round-states.ts';

const logged = roundAt('logged');
const { treatment } = phaseAt(logged, 'logged');

/** The round after a correction, with the day book as it then stands. */
function corrected(what: Correction['what']) {
  const correction = makeCorrection(what, treatment.id);
  const earlier = earlierDoses(pairUp([treatment], [correction]));
  const world = (ms: number) => farm(1000 + ms, { earlier });
  return { world, step: reduceRound(logged, { type: 'corrected', correction }, world(0)) };
}

describe('taking a dose back', () => {
  test('as not given offers the same visit again, under a new id, and stores nothing by itself', () => {
    const { step } = corrected({ kind: 'not-given' });
    expect(offerOf(step.round).id).not.toBe(OFFER_ID);
    expect(offerOf(step.round).animal.id).toBe('anna');
    expect(step.effects).toEqual([]);
  });

  test('as given to another animal ends the visit, and stops that other animal today', () => {
    const { step, world } = corrected({ kind: 'wrong-animal', animalId: 'bella' });
    expect(phaseAt(step.round, 'visit').visit).toEqual({ who: null, weight: null, onDeck: false });
    const bella = play(step.round, [wand('bella'), { type: 'stepped-on' }, weighed(40, 1000)], world);
    expect(phaseAt(bella, 'cautions').decision.cautions[0]?.code).toBe('same-active-today');
    const anna = play(step.round, [wand('anna'), { type: 'stepped-on' }, weighed(40, 1000)], world);
    expect(offerOf(anna).animal.id).toBe('anna');
  });

  test('as another volume ends the visit, and the animal that swallowed it stays stopped today', () => {
    const { step, world } = corrected({ kind: 'wrong-volume', volumeMl: 3 });
    const again = play(step.round, [wand('anna'), { type: 'stepped-on' }, weighed(40, 1000)], world);
    expect(phaseAt(again, 'cautions').decision.cautions[0]).toMatchObject({
      code: 'same-active-today',
      strength: 'stop',
    });
  });

  test('of another treatment than the one on screen changes nothing here', () => {
    const correction = makeCorrection({ kind: 'not-given' }, 'another');
    expect(reduceRound(logged, { type: 'corrected', correction }, farm(1000)).round).toBe(logged);
  });

  test('as not given, too late for its weight, asks for a new weighing', () => {
    const correction = makeCorrection({ kind: 'not-given' }, treatment.id);
    const { round } = reduceRound(logged, { type: 'corrected', correction }, farm(600_000));
    expect(phaseAt(round, 'visit').visit.weight).toBeNull();
  });
});
