import { describe, expect, test } from 'vitest';
import { IDENTITY_LIFE_MS } from '../../../core/round/platform.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import { FRESH_ROUND, type Round, type RoundEvent } from '../../../core/round/state.ts';
import {
  farm,
  offerOf,
  phaseAt,
  play,
  storedBy,
  TO_VISIT,
  tile,
  toWeighed,
  wand,
  weighed,
} from '../make/round.ts';

const ON: RoundEvent = { type: 'stepped-on' };
const OFF: RoundEvent = { type: 'stepped-off' };

/** Plays events at the times given, in milliseconds after the start. */
function timed(start: Round, events: readonly (readonly [ms: number, event: RoundEvent])[]): Round {
  return events.reduce((round, [ms, event]) => reduceRound(round, event, farm(ms)).round, start);
}

const ready = play(FRESH_ROUND, TO_VISIT);

describe('a tag read', () => {
  test('counts for twenty seconds before the step-on', () => {
    const round = timed(ready, [
      [0, wand('anna')],
      [IDENTITY_LIFE_MS, ON],
      [IDENTITY_LIFE_MS + 3000, weighed(40, IDENTITY_LIFE_MS + 3000)],
    ]);
    expect(offerOf(round).animal.id).toBe('anna');
  });

  test('does not count any longer after that', () => {
    const round = timed(ready, [
      [0, wand('anna')],
      [IDENTITY_LIFE_MS + 1, ON],
      [IDENTITY_LIFE_MS + 3000, weighed(40, IDENTITY_LIFE_MS + 3000)],
    ]);
    expect(phaseAt(round, 'visit').visit.who).toBeNull();
  });

  test('while the animal stands on the deck counts, before or after the hold', () => {
    expect(offerOf(play(ready, [ON, wand('anna'), weighed()])).animal.id).toBe('anna');
    expect(offerOf(play(ready, [ON, weighed(), wand('anna')])).animal.id).toBe('anna');
  });

  test('after the animal has left belongs to the next one and takes no weight with it', () => {
    const { visit } = phaseAt(play(ready, [ON, weighed(), OFF, wand('bella')]), 'visit');
    expect(visit).toMatchObject({ who: { animalId: 'bella' }, weight: null });
  });
});

describe('two tags in one visit', () => {
  test('both read on the deck ask which animal it is', () => {
    const round = play(ready, [ON, wand('anna'), wand('bella'), weighed()]);
    expect(phaseAt(round, 'which-animal').between).toEqual(['anna', 'bella']);
  });

  test('one read before and one on the deck ask which animal it is', () => {
    const round = play(ready, [wand('anna'), ON, wand('bella'), weighed()]);
    expect(phaseAt(round, 'which-animal').between).toEqual(['anna', 'bella']);
  });

  test('a tile tapped and then another tag read before the step-on ask which animal it is', () => {
    const round = timed(ready, [
      [0, tile('anna')],
      [5000, wand('bella')],
      [8000, ON],
    ]);
    expect(phaseAt(round, 'which-animal').between).toEqual(['anna', 'bella']);
  });

  test('a tile tapped after a tag was read is a choice, and settles it', () => {
    const round = timed(ready, [
      [0, wand('anna')],
      [5000, tile('bella')],
      [8000, ON],
    ]);
    expect(phaseAt(round, 'visit').visit.who?.animalId).toBe('bella');
  });

  test('both read within twenty seconds before the step-on ask which animal it is', () => {
    const round = timed(ready, [
      [0, wand('anna')],
      [5000, wand('bella')],
      [8000, ON],
      [11_000, weighed(40, 11_000)],
    ]);
    expect(round.phase.step).toBe('which-animal');
  });

  test('stay two when the wand reads the second one again and again before the step-on', () => {
    const round = timed(ready, [
      [0, wand('anna')],
      [5000, wand('bella')],
      [5300, wand('bella')],
      [8000, ON],
      [11_000, weighed(40, 11_000)],
    ]);
    expect(round.phase.step).toBe('which-animal');
  });

  test('stay two when three animals were read: the tile of the first can still be tapped', () => {
    const doubted = timed(ready, [
      [0, wand('anna')],
      [2000, wand('bella')],
      [4000, wand('cora')],
      [8000, ON],
      [11_000, weighed(28, 11_000)],
    ]);
    const { between } = phaseAt(doubted, 'which-animal');
    expect([...between].sort()).toEqual(['anna', 'bella', 'cora']);
  });

  test('are one when the first was read more than twenty seconds before the step-on', () => {
    const round = timed(ready, [
      [0, wand('anna')],
      [15_000, wand('bella')],
      [21_000, ON],
      [24_000, weighed(40, 24_000)],
    ]);
    expect(offerOf(round).animal.id).toBe('bella');
  });

  test('only a tap on one of the two settles it; the wand does not, nor a third animal', () => {
    const doubted = play(ready, [ON, wand('anna'), wand('bella'), weighed()]);
    expect(reduceRound(doubted, wand('anna'), farm(10)).refused).toBe('wrong-state');
    expect(reduceRound(doubted, tile('cora'), farm(10)).refused).toBe('wrong-state');
    expect(offerOf(play(doubted, [tile('bella')])).animal.id).toBe('bella');
  });
});

describe('an identity does not pass to another animal', () => {
  test('that steps on after the first one was weighed and left', () => {
    const round = play(FRESH_ROUND, [...toWeighed('anna'), OFF, ON, weighed(38, 7)]);
    expect(phaseAt(round, 'visit').visit.who).toBeNull();
  });

  test('that steps on after the first one left before its weight was held', () => {
    const round = play(ready, [wand('anna'), ON, OFF, ON, weighed()]);
    expect(phaseAt(round, 'visit').visit.who).toBeNull();
  });

  test('that steps on after the link was lost and came back', () => {
    const round = play(FRESH_ROUND, [...toWeighed('dot'), { type: 'platform-blank' }, ON, weighed(40, 9)]);
    expect(phaseAt(round, 'visit').visit.who).toBeNull();
  });
});

describe('a weight does not pass to another animal', () => {
  test('read by the wand after step-off while an offer stands', () => {
    const round = play(FRESH_ROUND, [...toWeighed('anna'), OFF, wand('bella')]);
    expect(phaseAt(round, 'visit').visit).toMatchObject({ who: { animalId: 'bella' }, weight: null });
    expect(round.unanswered.map(({ animal }) => animal.id)).toEqual(['anna']);
  });

  test('tapped after step-off while an offer stands', () => {
    const round = play(FRESH_ROUND, [...toWeighed('anna'), OFF, tile('bella')]);
    expect(phaseAt(round, 'visit').visit.weight).toBeNull();
  });

  test('tapped after an animal known by its tag was cautioned and left', () => {
    const cautioned = play(FRESH_ROUND, [...toWeighed('cora'), OFF]);
    expect(cautioned.phase.step).toBe('cautions');
    const round = play(cautioned, [tile('bella')]);
    expect(phaseAt(round, 'visit').visit.weight).toBeNull();
  });

  test('that stepped on while the first dose was being logged, when that dose is then taken back', () => {
    const offered = play(FRESH_ROUND, toWeighed('anna'));
    const given = reduceRound(
      offered,
      { type: 'give', offerId: offerOf(offered).id, outcome: 'whole' },
      farm(50),
    );
    const [treatment] = storedBy([given]);
    if (treatment === undefined) throw new Error('nothing stored');
    const what = { kind: 'not-given' } as const;
    const correction = { id: 'c', treatmentId: treatment.id, what, atMs: 0, by: 'Kim' };
    const round = play(given.round, [
      OFF,
      ON,
      { type: 'stored', treatment },
      { type: 'corrected', correction },
    ]);
    expect(round.phase.step).not.toBe('offered');
  });

  test('tapped after one left unnamed, unless the keeper confirms that it was that one', () => {
    const asked = play(ready, [ON, weighed(), OFF, tile('bella')]);
    expect(phaseAt(asked, 'cautions').decision.cautions[0]).toMatchObject({
      code: 'named-late',
      strength: 'ask',
    });
    const accepted = reduceRound(asked, { type: 'accept', code: 'named-late' }, farm(10)).round;
    expect(offerOf(accepted).animal.id).toBe('bella');
  });
});
