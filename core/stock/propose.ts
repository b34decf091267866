import { freshnessOf } from './expiry.ts';
import type { StockLot } from './lot.ts';
import { isWhole } from './pieces.ts';

/** The lots of a presentation of which something is there, the one to use first: begun ones, then by their month. */
export function lotsOf(lots: readonly StockLot[], presentationId: string): StockLot[] {
  return lots
    .filter((lot) => lot.presentationId === presentationId && lot.onHand.value > 0)
    .sort(
      (a, b) =>
        Number(isWhole(a.onHand)) - Number(isWhole(b.onHand)) ||
        a.expiresAtMs - b.expiresAtMs ||
        a.receivedAtMs - b.receivedAtMs,
    );
}

/** The lot to propose for a jug or a bottle: of those not expired, the one with an open packet, else the first to expire. */
export function proposedLot(
  lots: readonly StockLot[],
  presentationId: string,
  wallMs: number,
): StockLot | null {
  return lotsOf(lots, presentationId).find((lot) => freshnessOf(lot, wallMs) !== 'expired') ?? null;
}
