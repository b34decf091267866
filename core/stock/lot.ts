import { add, subtract } from '../quantity/quantity.ts';
import type { Volume } from '../quantity/volume.ts';
import { unreachable } from '../unreachable.ts';
import type { StockEvent } from './event.ts';
import { type Money, money } from './money.ts';
import { isMore, NO_PIECES, type Pieces, pieces } from './pieces.ts';

/** What is printed on the packets or bottles of one lot. */
export interface LotFacts {
  readonly id: string;
  readonly presentationId: string;
  /** The number of the lot; `null` where none could be read. */
  readonly lot: string | null;
  /** The last month printed; it counts from 1. */
  readonly expiry: { readonly year: number; readonly month: number };
  /** The instant that month is over on the farm's clocks, in milliseconds since 1970. */
  readonly expiresAtMs: number;
  /** What a bottle holds; `null` for a packet of powder. */
  readonly holds: Volume | null;
}

/** A lot with all that ever happened to it summed up. */
export interface StockLot extends LotFacts {
  readonly onHand: Pieces;
  /** When the first of it came in, in milliseconds since 1970. */
  readonly receivedAtMs: number;
  /** Whether anything was taken from it yet. */
  readonly begun: boolean;
  /** What was paid for how many of its pieces, in the currency paid last; `null` where no price is known. */
  readonly paid: { readonly total: Money; readonly pieces: Pieces } | null;
}

/** A lot of which nothing has come in yet. */
export function freshLot(facts: LotFacts): StockLot {
  return { ...facts, onHand: NO_PIECES, receivedAtMs: Number.POSITIVE_INFINITY, begun: false, paid: null };
}

/**
 * A lot after one more event.
 *
 * Throws `RangeError` where more would go than is there: a surplus is told by a count before it is taken.
 */
export function withEvent(lot: StockLot, event: StockEvent): StockLot {
  switch (event.kind) {
    case 'received':
      return {
        ...lot,
        onHand: add(lot.onHand, event.pieces),
        receivedAtMs: Math.min(lot.receivedAtMs, event.atMs),
        paid: event.price === null ? lot.paid : withPrice(lot.paid, event.price, event.pieces),
      };
    case 'taken':
      return { ...lot, onHand: less(lot, event.pieces), begun: true };
    case 'thrown-away':
      return { ...lot, onHand: less(lot, event.pieces) };
    case 'counted':
      return { ...lot, onHand: event.found };
    default:
      return unreachable(event);
  }
}

function less({ id, onHand }: StockLot, gone: Pieces): Pieces {
  if (isMore(gone, onHand)) throw new RangeError(`lot ${id} holds ${onHand.value}, not ${gone.value}`);
  return pieces(subtract(onHand, gone).value);
}

function withPrice(paid: StockLot['paid'], price: Money, bought: Pieces): StockLot['paid'] {
  if (paid === null || paid.total.currency !== price.currency) return { total: price, pieces: bought };
  return {
    total: money(price.currency, paid.total.minor + price.minor),
    pieces: add(paid.pieces, bought),
  };
}

/** Every lot with its events summed up, in the order of the facts. An event of no lot known is left out. */
export function tally(facts: readonly LotFacts[], events: readonly StockEvent[]): StockLot[] {
  const lots = new Map(facts.map((each) => [each.id, freshLot(each)]));
  for (const event of events) {
    const lot = lots.get(event.lotId);
    if (lot !== undefined) lots.set(event.lotId, withEvent(lot, event));
  }
  return [...lots.values()];
}
