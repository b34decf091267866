import type { Deck } from '../weighing/deck.ts';
import type { RoundEvent } from './state.ts';

/** What a change on the platform means to the round, in the order it happened. */
export function deckEvents(before: Deck, after: Deck): RoundEvent[] {
  const events: RoundEvent[] = [];
  if (before.onSince === null && after.onSince !== null) events.push({ type: 'stepped-on' });
  if (after.held !== null && after.held !== before.held) events.push({ type: 'held', held: after.held });
  if (before.onSince !== null && after.onSince === null) {
    events.push(after.verdict === 'blank' ? { type: 'platform-blank' } : { type: 'stepped-off' });
  } else if (after.verdict === 'blank' && before.verdict !== 'blank') {
    events.push({ type: 'platform-blank' });
  }
  return events;
}
