import type { StockEventView, StockLotView } from '../../shared/stock.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** What there is to say of an event beside how many pieces it was: its price, jug, reason or difference. */
export function eventDetail(
  { kind, price, jugNumber, why, difference }: StockEventView,
  form: StockLotView['form'],
  words: Words,
  show: Show,
): string {
  const { stock } = words;
  switch (kind) {
    case 'received':
      return price === null ? '' : stock.priceOfAll(show.money(price));
    case 'taken':
      if (jugNumber === null) return stock.notKept;
      return (form === 'powder' ? stock.intoJug : stock.intoBottle)(String(jugNumber));
    case 'thrown-away':
      return why === null ? '' : stock.why[why];
    case 'counted': {
      const off = Math.abs(difference ?? 0);
      const sign = (difference ?? 0) < 0 ? '−' : '+';
      return stock.difference(off === 0 ? '0' : `${sign}${show.number(off, 2)}`);
    }
  }
}
