import { describe, expect, test } from 'vitest';
import { WEIGHT_LIFE_MS } from '../../../core/round/offer.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import { FRESH_ROUND, type Round, type RoundEvent } from '../../../core/round/state.ts';
import {
  farm,
  offeredRound,
  offerOf,
  phaseAt,
  play,
  storedBy,
  TO_VISIT,
  toWeighed,
  wand,
  weighed,
} from '../make/round.ts';
import { makeSyringe } from '../make/syringe.ts';

const ON: RoundEvent = { type: 'stepped-on' };
const OFF: RoundEvent = { type: 'stepped-off' };
const SYRINGES: RoundEvent = { type: 'world-changed', what: 'syringes' };

function give(round: Round, ms: number) {
  return reduceRound(round, { type: 'give', offerId: offerOf(round).id, outcome: 'whole' }, farm(ms));
}

describe('an offer', () => {
  test('stays givable after the animal has left the deck, for ten minutes from the hold', () => {
    const off = play(offeredRound(), [OFF]);
    expect(storedBy([give(off, WEIGHT_LIFE_MS - 1)])).toHaveLength(1);
  });

  test('can no longer be given at ten minutes, and then waits for "was it given?"', () => {
    const step = give(offeredRound(), WEIGHT_LIFE_MS);
    expect(step.refused).toBe('offer-ended');
    expect(storedBy([step])).toHaveLength(0);
    expect(step.round.unanswered).toHaveLength(1);
    expect(step.effects).toMatchObject([{ do: 'record-lapse', reason: 'timed-out' }]);
  });

  test('lives ten minutes from the weight, not from when it was made', () => {
    const weighedFirst = play(FRESH_ROUND, [...TO_VISIT, ON, weighed()]);
    const late = reduceRound(weighedFirst, wand('anna'), farm(WEIGHT_LIFE_MS - 1000));
    expect(give(late.round, WEIGHT_LIFE_MS).refused).toBe('offer-ended');
  });

  test('is not made on a weight ten minutes old', () => {
    const weighedFirst = play(FRESH_ROUND, [...TO_VISIT, ON, weighed()]);
    const { visit } = phaseAt(reduceRound(weighedFirst, wand('anna'), farm(WEIGHT_LIFE_MS)).round, 'visit');
    expect(visit.weight).toBeNull();
  });

  test('says the same end as uptime and as wall time', () => {
    const { expiresAtMs, expiresAtUptimeMs, weight } = offerOf(offeredRound());
    expect(expiresAtUptimeMs - weight.held.at).toBe(WEIGHT_LIFE_MS);
    expect(expiresAtMs - weight.atMs).toBe(WEIGHT_LIFE_MS);
  });

  test('already shown can be given while the link is lost', () => {
    const blank = play(offeredRound(), [{ type: 'platform-blank' }]);
    const step = reduceRound(
      blank,
      { type: 'give', offerId: offerOf(blank).id, outcome: 'whole' },
      farm(500, { platformReady: false }),
    );
    expect(storedBy([step])).toHaveLength(1);
  });
});

describe('an offer that ended without an answer', () => {
  const lapsed = play(offeredRound(), [OFF, ON]);

  test('waits, and stops another dose to the same animal', () => {
    const again = play(lapsed, [wand('anna'), weighed(40, 3)]);
    const { decision } = phaseAt(again, 'cautions');
    expect(decision.cautions[0]).toMatchObject({ code: 'unanswered-offer', strength: 'stop' });
  });

  test('does not stop another animal', () => {
    expect(offerOf(play(lapsed, [wand('bella'), weighed(40, 3)])).animal.id).toBe('bella');
  });

  test('is stored once, as late, when answered as given', () => {
    const [waiting] = lapsed.unanswered;
    if (waiting === undefined) throw new Error('no offer waits');
    const answer: RoundEvent = { type: 'answer', offerId: waiting.id, given: true };
    const first = reduceRound(lapsed, answer, farm(5000));
    const second = reduceRound(first.round, answer, farm(5001));
    expect(storedBy([first, second])).toMatchObject([{ late: true, outcome: 'whole', offer: waiting }]);
    expect(second.refused).toBe('offer-ended');
  });

  test('is recorded as not given when answered so, and no longer waits', () => {
    const [waiting] = lapsed.unanswered;
    if (waiting === undefined) throw new Error('no offer waits');
    const step = reduceRound(lapsed, { type: 'answer', offerId: waiting.id, given: false }, farm(5000));
    expect(step.effects).toEqual([{ do: 'record-not-given', offer: waiting }]);
    expect(step.round.unanswered).toEqual([]);
  });

  test('frees the animal standing there at once when answered as not given', () => {
    const stopped = play(offeredRound(), [SYRINGES]);
    const [waiting] = stopped.unanswered;
    if (waiting === undefined) throw new Error('no offer waits');
    expect(stopped.phase.step).toBe('cautions');
    const freed = reduceRound(stopped, { type: 'answer', offerId: waiting.id, given: false }, farm(5000));
    expect(offerOf(freed.round).animal.id).toBe('anna');
  });
});

describe('an offer ends', () => {
  test('by other syringes, which never change it: a new one with a new id takes its place', () => {
    const old = offerOf(offeredRound());
    const changed = reduceRound(offeredRound(), SYRINGES, farm(50, { syringes: [makeSyringe(12, 1)] }));
    expect(changed.round.unanswered).toEqual([old]);
    const answered = reduceRound(
      changed.round,
      { type: 'answer', offerId: old.id, given: false },
      farm(60, { syringes: [makeSyringe(12, 1)] }),
    );
    expect(offerOf(answered.round).id).not.toBe(old.id);
    expect(offerOf(answered.round).dose.plan.syringe.graduation.value).toBe(1);
    expect(give(answered.round, 80).refused).toBeNull();
    const again = reduceRound(answered.round, { type: 'give', offerId: old.id, outcome: 'whole' }, farm(80));
    expect(again.refused).toBe('offer-ended');
  });

  test('by a new weight: the first foot’s offer ends when the whole animal is held', () => {
    const first = play(FRESH_ROUND, toWeighed('anna', 30));
    const step = reduceRound(
      first,
      { type: 'held', held: { ...offerOf(first).weight.held, mass: { unit: 'g', value: 40_000 } } },
      farm(3000),
    );
    expect(step.effects).toMatchObject([{ do: 'record-lapse', reason: 'reweighed' }]);
  });

  test('by a skip: the animal and the weight of the offer are on record', () => {
    const { weight } = offerOf(offeredRound());
    const step = reduceRound(offeredRound(), { type: 'skip', reason: 'sick' }, farm(50));
    expect(step.effects).toEqual([{ do: 'record-skip', animalId: 'anna', reason: 'sick', weight }]);
  });

  test('by a skip after the link was lost: its animal and its weight are still on record', () => {
    const { weight } = offerOf(offeredRound());
    const blank = play(offeredRound(), [{ type: 'platform-blank' }]);
    const step = reduceRound(blank, { type: 'skip', reason: 'sick' }, farm(50));
    expect(step.effects).toEqual([{ do: 'record-skip', animalId: 'anna', reason: 'sick', weight }]);
  });

  test('not by its own animal being read again, link lost or not', () => {
    expect(offerOf(play(offeredRound(), [OFF, wand('anna')]))).toEqual(offerOf(offeredRound()));
    const blank = play(offeredRound(), [{ type: 'platform-blank' }]);
    expect(offerOf(play(blank, [wand('anna')]))).toEqual(offerOf(offeredRound()));
  });
});
