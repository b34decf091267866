import { describe, expect, test } from 'vitest';
import { reduceRound } from '../../../core/round/reduce.ts';
import { FRESH_ROUND, type RoundEvent, type RoundStep } from '../../../core/round/state.ts';
import { farm, offeredRound, offerOf, phaseAt, play, playSteps, storedBy, toWeighed } from '../make/round.ts';
import { STORED } from '../make/round-states.ts';

const offered = offeredRound();
const offer = offerOf(offered);
const GIVE: RoundEvent = { type: 'give', offerId: offer.id, outcome: 'whole' };

/** All that happens after the first press, whatever it is refused with. */
function pressThen(...events: readonly RoundEvent[]): RoundStep[] {
  return playSteps(offered, [GIVE, ...events]);
}

describe('one offer yields one treatment', () => {
  test.each<[string, RoundEvent[]]>([
    ['pressed three times', [GIVE, GIVE]],
    ['pressed again after it was stored', [STORED, GIVE]],
    ['pressed again as spat out', [{ ...GIVE, outcome: 'spat-out' }]],
    ['answered as given as well', [{ type: 'answer', offerId: offer.id, given: true }]],
    [
      'stored, then the tag read again',
      [STORED, { type: 'identified', animalId: 'anna', via: 'wand' }, GIVE],
    ],
    ['pressed, then the next asked for, then pressed', [STORED, { type: 'next' }, GIVE]],
  ])('when %s', (_, events) => {
    expect(storedBy(pressThen(...events))).toHaveLength(1);
  });

  test('when two presses arrive under two intents the second is refused', () => {
    expect(pressThen(GIVE).map(({ refused }) => refused)).toEqual([null, 'offer-ended']);
  });

  test('and a press that names another offer stores nothing', () => {
    const other = reduceRound(offered, { ...GIVE, offerId: `${offer.id}x` }, farm(5));
    expect(other.effects).toEqual([]);
    expect(other.refused).toBe('offer-ended');
  });
});

describe('what was shown is what is logged', () => {
  test('the treatment carries the offer itself, unrounded volume beside the rounded one', () => {
    const [treatment] = storedBy(pressThen());
    expect(treatment?.offer).toEqual(offer);
    expect(treatment?.offer.dose.plan.total.value).toBe(9.8);
    expect(treatment?.offer.dose.exact.value).not.toBe(9.8);
  });

  test('a treatment that is not the offer being logged does not end the logging', () => {
    const [logging] = pressThen();
    if (logging === undefined) throw new Error('nothing happened');
    const [own] = storedBy([logging]);
    if (own === undefined) throw new Error('nothing stored');
    const stranger: RoundEvent = {
      type: 'stored',
      treatment: { ...own, offer: { ...own.offer, id: 'other' } },
    };
    expect(reduceRound(logging.round, stranger, farm(9)).round.phase.step).toBe('logging');
  });

  test('an accepted ask is on the treatment, and the clear times count from the giving', () => {
    const cora = play(FRESH_ROUND, [...toWeighed('cora'), { type: 'accept', code: 'weight-far-from-last' }]);
    const world = farm(60_000);
    const step = reduceRound(cora, { type: 'give', offerId: offerOf(cora).id, outcome: 'whole' }, world);
    const [treatment] = storedBy([step]);
    expect(treatment?.accepted.map(({ code }) => code)).toEqual(['weight-far-from-last']);
    expect(treatment?.givenAtMs).toBe(world.now.wallMs);
    expect(treatment?.meat).toEqual({ kind: 'at', atMs: world.now.wallMs + 96 * 3_600_000 });
    expect(treatment?.milk).toEqual({ kind: 'unknown' });
    expect(treatment?.late).toBe(false);
  });

  test('a spat-out or part dose is logged as such', () => {
    for (const result of ['part', 'spat-out'] as const) {
      const [treatment] = storedBy([reduceRound(offered, { ...GIVE, outcome: result }, farm(5))]);
      expect(treatment?.outcome).toBe(result);
    }
  });

  test('the screen offers to take it back for a minute', () => {
    const logged = pressThen(STORED).at(-1);
    if (logged === undefined) throw new Error('nothing happened');
    expect(phaseAt(logged.round, 'logged').undoUntil - farm(1).now.uptimeMs).toBe(60_000);
  });
});
