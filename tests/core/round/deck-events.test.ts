import { describe, expect, test } from 'vitest';
import { deckEvents } from '../../../core/round/deck-events.ts';
import { BLANK_DECK } from '../../../core/weighing/deck.ts';
import { feedAll, stepOnWith } from '../make/deck.ts';
import { readings } from '../make/reading.ts';

describe('what the deck tells the round', () => {
  test('of one animal: stepped on, held, stepped off, in that order and once each', () => {
    const { events } = feedAll([
      ...readings(0, 1000, 10, () => 0),
      ...readings(1000, 5000, 10, () => 40_000),
      ...readings(6000, 2000, 10, () => 0),
    ]);
    expect(events.map(({ type }) => type)).toEqual(['stepped-on', 'held', 'stepped-off']);
  });

  test('of two animals: the second has a hold of its own that replaces nothing', () => {
    const { holds, events } = feedAll([
      ...readings(0, 1000, 10, () => 0),
      ...readings(1000, 5000, 10, () => 40_000),
      ...readings(6000, 2000, 10, () => 0),
      ...readings(8000, 5000, 10, () => 41_000),
    ]);
    expect(events.filter(({ type }) => type === 'stepped-on')).toHaveLength(2);
    expect(holds.map(({ mass, changedFrom }) => [mass.value, changedFrom])).toEqual([
      [40_000, null],
      [41_000, null],
    ]);
  });

  test('of a lost link: the platform went blank, whether it was loaded or not', () => {
    const loaded = stepOnWith(() => 40_000, 4000).deck;
    const empty = feedAll(readings(0, 1000, 10, () => 0)).deck;
    expect(deckEvents(loaded, BLANK_DECK)).toEqual([{ type: 'platform-blank' }]);
    expect(deckEvents(empty, BLANK_DECK)).toEqual([{ type: 'platform-blank' }]);
    expect(deckEvents(BLANK_DECK, BLANK_DECK)).toEqual([]);
  });

  test('of a reading that changes nothing: nothing', () => {
    const { deck } = stepOnWith(() => 40_000, 4000);
    expect(
      feedAll(
        readings(5000, 1000, 10, () => 40_000),
        deck,
      ).events,
    ).toEqual([]);
  });
});
