import { deckEvents } from '../../../core/round/deck-events.ts';
import type { RoundEvent } from '../../../core/round/state.ts';
import { BLANK_DECK, type Deck, feedDeck } from '../../../core/weighing/deck.ts';
import type { Reading } from '../../../core/weighing/reading.ts';
import type { Held } from '../../../core/weighing/settle.ts';
import { PLATFORM, readings } from './reading.ts';

/** What a run of readings made of a deck. */
export interface DeckRun {
  readonly deck: Deck;
  /** Every different hold, in order. */
  readonly holds: readonly Held[];
  readonly events: readonly RoundEvent[];
  readonly verdicts: readonly Deck['verdict'][];
}

/** Feeds readings into a deck, one after the other. */
export function feedAll(all: readonly Reading[], start: Deck = BLANK_DECK): DeckRun {
  let deck = start;
  const holds: Held[] = [];
  const events: RoundEvent[] = [];
  const verdicts: Deck['verdict'][] = [];
  for (const reading of all) {
    const next = feedDeck(deck, reading, PLATFORM);
    if (next.held !== null && next.held !== deck.held) holds.push(next.held);
    events.push(...deckEvents(deck, next));
    verdicts.push(next.verdict);
    deck = next;
  }
  return { deck, holds, events, verdicts };
}

/** A second of empty deck, then a load for a time; the load starts at 1,000 ms. */
export function stepOnWith(load: (ms: number) => number, lengthMs: number, hz = 10): DeckRun {
  return feedAll([...readings(0, 1000, hz, () => 0), ...readings(1000, lengthMs, hz, load)]);
}
