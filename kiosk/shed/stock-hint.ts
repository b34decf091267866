import type { StockView } from '../../shared/stock.ts';
import type { FirstWords } from '../words/words.ts';

/** What of the stock needs a look, in a few words; `null` where nothing does. */
export function stockHint({ expired, last, lots }: StockView, { shipped, stock }: FirstWords): string | null {
  if (expired.length > 0) return stock.expiredCount(expired.length);
  if (last.length > 1) return stock.lastCount(last.length);
  const medicine = lots.find(({ presentationId }) => presentationId === last[0])?.medicine;
  return medicine === undefined ? null : stock.lastOf(shipped(medicine));
}
