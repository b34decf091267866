import { describe, expect, test } from 'vitest';
import { deckEvents } from '../../../core/round/deck-events.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import { FRESH_ROUND, type Round } from '../../../core/round/state.ts';
import { BLANK_DECK, type Deck, feedDeck } from '../../../core/weighing/deck.ts';
import type { Reading } from '../../../core/weighing/reading.ts';
import { animalSignal } from '../make/animal-signal.ts';
import { PLATFORM, readings } from '../make/reading.ts';
import { farm, offerOf, play, TO_VISIT, tile, wand } from '../make/round.ts';
import { UP } from '../make/time.ts';

interface Barn {
  readonly deck: Deck;
  readonly round: Round;
}

/** Feeds platform readings into deck and round together, as the shell does; readings count from the start. */
function feed(barn: Barn, all: readonly Reading[]): Barn {
  return all.reduce(({ deck, round }, reading) => {
    const next = feedDeck(deck, { ...reading, at: UP + reading.at }, PLATFORM);
    const after = deckEvents(deck, next).reduce(
      (now, event) => reduceRound(now, event, farm(reading.at)).round,
      round,
    );
    return { deck: next, round: after };
  }, barn);
}

function load(from: number, length: number, grams: number): Reading[] {
  return readings(from, length, 10, grams < 1000 ? () => grams : animalSignal(grams, 'calm', from + 1));
}

const start: Barn = { deck: BLANK_DECK, round: play(FRESH_ROUND, TO_VISIT) };
const named = (barn: Barn, ...events: Parameters<typeof play>[1]): Barn => ({
  ...barn,
  round: play(barn.round, events),
});

describe('from platform readings to a dose', () => {
  test('an animal read, weighed and gone has its dose within one percent', () => {
    const read = named(feed(start, load(0, 1000, 0)), wand('anna'));
    const { round } = feed(read, [...load(1000, 6000, 40_000), ...load(7000, 2000, 0)]);
    expect(offerOf(round).animal.id).toBe('anna');
    expect(Math.abs(offerOf(round).dose.exact.value / 9.7062 - 1)).toBeLessThan(0.01);
  });

  test('an animal that follows over a clean deck is nobody until it is read or named', () => {
    const read = named(feed(start, load(0, 1000, 0)), wand('anna'));
    const { round } = feed(read, [
      ...load(1000, 6000, 40_000),
      ...load(7000, 2000, 0),
      ...load(9000, 6000, 38_000),
    ]);
    expect(round.phase).toMatchObject({ step: 'visit', visit: { who: null } });
  });

  test('an animal that follows over a dunged deck is never dosed as the one before', () => {
    const read = named(feed(start, load(0, 1000, 0)), wand('anna'));
    const fouled = feed(read, [...load(1000, 6000, 40_000), ...load(7000, 4000, 300)]);
    const { round } = feed(fouled, load(11_000, 8000, 52_000));
    expect(offerOf(round)).toBe(offerOf(fouled.round));
    expect(Math.abs(offerOf(round).weight.held.mass.value / 40_000 - 1)).toBeLessThan(0.01);
  });

  test('a dose stays with the weight of the hold when the animal fidgets on the deck', () => {
    const read = named(feed(start, load(0, 1000, 0)), tile('anna'));
    const settled = feed(read, load(1000, 6000, 40_000));
    const fidget = readings(7000, 8000, 10, animalSignal(40_000, 'restless', 11));
    expect(offerOf(feed(settled, fidget).round)).toBe(offerOf(settled.round));
  });
});
