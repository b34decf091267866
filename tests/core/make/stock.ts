import { millilitres } from '../../../core/quantity/volume.ts';
import type { StockChange, StockEvent } from '../../../core/stock/event.ts';
import { freshLot, type LotFacts, type StockLot, withEvent } from '../../../core/stock/lot.ts';
import { type Money, money } from '../../../core/stock/money.ts';
import { pieces } from '../../../core/stock/pieces.ts';
import { NINE_OCLOCK } from './time.ts';

/** What is printed on a lot of packets that is good for years. */
export function lotFacts(over: Partial<LotFacts> = {}): LotFacts {
  return {
    id: 'lot-1',
    presentationId: 'levamisole-52g',
    lot: 'A12',
    expiry: { year: 2030, month: 6 },
    expiresAtMs: Date.UTC(2030, 6, 1),
    holds: null,
    ...over,
  };
}

/** What is printed on a lot of bottles of a litre. */
export const BOTTLES: LotFacts = lotFacts({
  id: 'lot-b',
  presentationId: 'fenbendazole-100',
  holds: millilitres(1000),
});

/** A change as it happened to a lot at nine o'clock. */
export function happened(change: StockChange, lotId = 'lot-1', atMs = NINE_OCLOCK): StockEvent {
  return { ...change, id: 'e', lotId, atMs, by: 'Kim', clockTrusted: true };
}

/** A lot of which so many came in. */
export function lotOf(count: number, over: Partial<LotFacts> = {}, price: Money | null = null): StockLot {
  const facts = lotFacts(over);
  return withEvent(freshLot(facts), happened({ kind: 'received', pieces: pieces(count), price }, facts.id));
}

/** Ten packets for 124.00. */
export const TEN_FOR = lotOf(10, {}, money('EUR', 12_400));
