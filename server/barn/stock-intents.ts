import { presentationById } from '../../core/medicine/formulary.ts';
import { expiresAt } from '../../core/mixing/bottle.ts';
import { millilitres } from '../../core/quantity/volume.ts';
import { countAnew, takeFrom, throwAway } from '../../core/stock/change.ts';
import type { StockChange, StockEvent } from '../../core/stock/event.ts';
import { freshLot, type StockLot, withEvent } from '../../core/stock/lot.ts';
import { money } from '../../core/stock/money.ts';
import { type Pieces, pieces } from '../../core/stock/pieces.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { BarnContext } from './barn-context.ts';

type Of<T extends Intent['type']> = Extract<Intent, { type: T }>;

/** Writes what happened to a lot, on disk and in memory. */
function happened(barn: BarnContext, lot: StockLot, changes: readonly StockChange[]): void {
  const { clock, memory, store } = barn;
  const events = changes.map(
    (change): StockEvent => ({
      ...change,
      id: barn.newId(),
      lotId: lot.id,
      atMs: Math.round(clock.now().wallMs),
      by: memory.settings.person,
      clockTrusted: clock.isTrusted(),
    }),
  );
  for (const event of events) store.stock.add(event);
  const after = events.reduce(withEvent, lot);
  const others = barn.memory.stock.filter(({ id }) => id !== lot.id);
  barn.memory = { ...barn.memory, stock: [...others, after] };
}

/** Takes pieces of a lot out of the stock into a jug, or a bottle that was opened; `null` where nobody kept the mix. */
export function takeFromStock(barn: BarnContext, lotId: string, taken: Pieces, jugId: string | null): void {
  const lot = barn.memory.stock.find(({ id }) => id === lotId);
  if (lot !== undefined) happened(barn, lot, takeFrom(lot, taken, jugId));
}

/** Takes packets or bottles in: of a lot known by its print more of the same, else a lot of its own. */
export function receiveStock(barn: BarnContext, intent: Of<'stock-receive'>): Refusal | null {
  const { memory, store, config } = barn;
  const { presentationId, lot: number, expiry, holdsMl, priceMinor } = intent;
  const found = presentationById(memory.formulary, presentationId);
  if (found === undefined) return 'no-such-packet';
  if ((found.presentation.form === 'liquid') !== (holdsMl !== null)) return 'bad-input';
  const same = memory.stock.find(
    (lot) =>
      lot.presentationId === presentationId &&
      lot.lot === number &&
      lot.expiry.year === expiry.year &&
      lot.expiry.month === expiry.month &&
      (lot.holds?.value ?? null) === holdsMl,
  );
  const lot =
    same ??
    freshLot({
      id: barn.newId(),
      presentationId,
      lot: number,
      expiry,
      expiresAtMs: expiresAt(expiry, config.timeZone),
      holds: holdsMl === null ? null : millilitres(holdsMl),
    });
  if (same === undefined) store.stock.addLot(lot);
  const price = priceMinor === null ? null : money(memory.settings.currency, priceMinor);
  happened(barn, lot, [{ kind: 'received', pieces: pieces(intent.pieces), price }]);
  return null;
}

/** Throws packets or bottles away. */
export function throwStockAway(barn: BarnContext, intent: Of<'stock-throw-away'>): Refusal | null {
  const lot = barn.memory.stock.find(({ id }) => id === intent.lotId);
  if (lot === undefined) return 'no-such-lot';
  if (intent.pieces === 0) return 'bad-input';
  const change = throwAway(lot, pieces(intent.pieces), intent.why);
  if (change === 'more-than-on-hand') return change;
  happened(barn, lot, [change]);
  return null;
}

/** Keeps what a count found. */
export function countStock(barn: BarnContext, intent: Of<'stock-count'>): Refusal | null {
  const lot = barn.memory.stock.find(({ id }) => id === intent.lotId);
  if (lot === undefined) return 'no-such-lot';
  happened(barn, lot, [countAnew(lot, pieces(intent.pieces))]);
  return null;
}
