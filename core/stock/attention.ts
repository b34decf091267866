import { freshnessOf } from './expiry.ts';
import type { StockLot } from './lot.ts';

/** What of the stock a keeper should know without asking. */
export type StockAttention =
  | { readonly kind: 'expired'; readonly lotId: string }
  /** One packet or bottle is left of a presentation, or less. */
  | { readonly kind: 'last'; readonly presentationId: string };

/** What needs a look: lots past their month that are still here, and medicines that run out. */
export function attentionTo(lots: readonly StockLot[], wallMs: number): StockAttention[] {
  const here = lots.filter(({ onHand }) => onHand.value > 0);
  const isExpired = (lot: StockLot): boolean => freshnessOf(lot, wallMs) === 'expired';
  const usable = new Map<string, number>();
  for (const lot of here.filter((each) => !isExpired(each)))
    usable.set(lot.presentationId, (usable.get(lot.presentationId) ?? 0) + lot.onHand.value);
  return [
    ...here.filter(isExpired).map(({ id }) => ({ kind: 'expired', lotId: id }) as const),
    ...[...usable]
      .filter(([, left]) => left <= 1)
      .map(([presentationId]) => ({ kind: 'last', presentationId }) as const),
  ];
}
