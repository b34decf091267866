import type { StockChange, ThrownAway } from './event.ts';
import type { StockLot } from './lot.ts';
import { isMore, type Pieces } from './pieces.ts';

/**
 * The changes of taking pieces into a jug, or of opening a bottle.
 *
 * What is in a jug was there, whatever the list says: where it holds less, a count that found the rest is told first.
 */
export function takeFrom(lot: StockLot, taken: Pieces, jugId: string | null): StockChange[] {
  const take: StockChange = { kind: 'taken', pieces: taken, jugId };
  return isMore(taken, lot.onHand) ? [countAnew(lot, taken), take] : [take];
}

/** The change of a count: what was found stands, and the difference is kept. */
export function countAnew(lot: StockLot, found: Pieces): StockChange {
  return { kind: 'counted', found, difference: found.value - lot.onHand.value };
}

/** The change of throwing pieces away; more than there are cannot be. */
export function throwAway(lot: StockLot, gone: Pieces, why: ThrownAway): StockChange | 'more-than-on-hand' {
  return isMore(gone, lot.onHand) ? 'more-than-on-hand' : { kind: 'thrown-away', pieces: gone, why };
}
