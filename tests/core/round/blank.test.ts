import { describe, expect, test } from 'vitest';
import { reduceRound } from '../../../core/round/reduce.ts';
import { FRESH_ROUND, type Round, type RoundEvent } from '../../../core/round/state.ts';
import { farm, offeredRound, offerOf, phaseAt, play, storedBy, tile, toWeighed } from '../make/round.ts';
import { roundAt } from '../make/round-states.ts';

const BLANK: RoundEvent = { type: 'platform-blank' };

/** Gives the standing offer, has it stored, then says it was never given. */
function givenAndTakenBack(round: Round): Round {
  const offerId = offerOf(round).id;
  const given = reduceRound(round, { type: 'give', offerId, outcome: 'whole' }, farm(100));
  const [treatment] = storedBy([given]);
  if (treatment === undefined) throw new Error('nothing stored');
  const logged = reduceRound(given.round, { type: 'stored', treatment }, farm(200));
  const what = { kind: 'not-given' } as const;
  const correction = { id: 'c', treatmentId: treatment.id, what, atMs: 0, by: 'Kim' };
  return reduceRound(logged.round, { type: 'corrected', correction }, farm(300)).round;
}

describe('a weight ends with the connection that brought it', () => {
  test.each(['visit: weight only', 'cautions: stop', 'cautions: ask'] as const)('at %s', (state) => {
    expect(phaseAt(play(roundAt(state), [BLANK]), 'visit').visit.weight).toBeNull();
  });

  test('at which-animal: naming the animal afterwards offers nothing', () => {
    expect(play(roundAt('which-animal'), [BLANK, tile('anna')]).phase.step).toBe('visit');
  });

  test('and an offer already shown does not hand it on to a second offer when the dose is taken back', () => {
    const again = givenAndTakenBack(play(offeredRound(), [BLANK]));
    expect(again.phase.step).toBe('visit');
    expect(phaseAt(again, 'visit').visit.weight).toBeNull();
  });

  test('also when the link is lost while the dose is being logged', () => {
    const logged = play(roundAt('logged'), [BLANK]);
    const { treatment } = phaseAt(logged, 'logged');
    const correction = {
      id: 'c',
      treatmentId: treatment.id,
      what: { kind: 'not-given' },
      atMs: 0,
      by: 'Kim',
    } as const;
    expect(play(logged, [{ type: 'corrected', correction }]).phase.step).toBe('visit');
  });

  test('and an offer already shown does not hand it on when the syringes change', () => {
    const cora = play(FRESH_ROUND, [
      ...toWeighed('cora'),
      { type: 'accept', code: 'weight-far-from-last' },
      BLANK,
      { type: 'world-changed', what: 'syringes' },
    ]);
    const [waiting] = cora.unanswered;
    if (waiting === undefined) throw new Error('no offer waits');
    const freed = reduceRound(cora, { type: 'answer', offerId: waiting.id, given: false }, farm(400)).round;
    const accepted = reduceRound(freed, { type: 'accept', code: 'weight-far-from-last' }, farm(500)).round;
    expect(accepted.phase.step).not.toBe('offered');
  });

  test('while the same dose taken back with the link up is offered again under a new id', () => {
    const again = givenAndTakenBack(offeredRound());
    expect(offerOf(again).id).not.toBe(offerOf(offeredRound()).id);
    expect(offerOf(again).weight).toEqual(offerOf(offeredRound()).weight);
  });
});
