import type { ExpiryMonth, StockLotView } from '../../shared/stock.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** A month as it is printed, such as "Aug 2027". */
export function monthShown({ year, month }: ExpiryMonth, words: Words): string {
  return `${words.bottle.month(month, words.locale)} ${year}`;
}

/** Packets or bottles, parts of one to a hundredth. */
export function piecesShown(form: StockLotView['form'], pieces: number, words: Words, show: Show): string {
  return words.stock.pieces[form](show.number(pieces, 2), pieces === 1);
}

/** The number of a lot, or that it has none. */
export function lotShown(lot: string | null, words: Words): string {
  return lot === null ? words.stock.noLot : words.stock.lot(lot);
}

/** How long a lot may be used. */
export function expiryShown({ expiry, freshness }: StockLotView, words: Words): string {
  const month = monthShown(expiry, words);
  if (freshness === 'expired') return words.stock.expired(month);
  return freshness === 'soon'
    ? `${words.stock.expires(month)}, ${words.stock.soon}`
    : words.stock.expires(month);
}
