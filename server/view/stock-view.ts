import { presentationById } from '../../core/medicine/formulary.ts';
import { quantity } from '../../core/quantity/quantity.ts';
import { attentionTo } from '../../core/stock/attention.ts';
import { activeInPiece, costOfActive, costOfPieces } from '../../core/stock/cost.ts';
import type { StockEvent } from '../../core/stock/event.ts';
import { freshnessOf } from '../../core/stock/expiry.ts';
import { headNeed, headsIn } from '../../core/stock/heads.ts';
import type { StockLot } from '../../core/stock/lot.ts';
import { pieces } from '../../core/stock/pieces.ts';
import { lotsOf, proposedLot } from '../../core/stock/propose.ts';
import type { StockEventView, StockLotPage, StockLotView, StockView } from '../../shared/stock.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import { rfc3339 } from './times.ts';

/** How many events of a lot its page carries. */
const EVENTS = 200;

/** A month ends once in a while: the stock is looked at anew this often. */
const ANEW_MS = 60_000;
const kept = new WeakMap<BarnContext, { readonly of: readonly unknown[]; readonly view: StockView }>();

/** The stock as every screen knows it; worked out anew only where something it rests on has changed. */
export function stockView(barn: BarnContext): StockView {
  const { stock, animals, approvals, settings } = barn.memory;
  const { wallMs } = barn.clock.now();
  const of = [stock, animals, approvals, settings.currency, Math.floor(wallMs / ANEW_MS)];
  const before = kept.get(barn);
  if (before?.of.every((part, i) => part === of[i]) === true) return before.view;
  const view = viewAt(barn, wallMs);
  kept.set(barn, { of, view });
  return view;
}

function viewAt(barn: BarnContext, wallMs: number): StockView {
  const { memory } = barn;
  const presentations = memory.formulary.flatMap((medicine) => medicine.presentations.map(({ id }) => id));
  const attention = attentionTo(memory.stock, wallMs);
  return {
    currency: memory.settings.currency,
    lots: presentations.flatMap((id) =>
      lotsOf(memory.stock, id).flatMap((lot) => lotView(barn, lot, wallMs) ?? []),
    ),
    expired: attention.flatMap((each) => (each.kind === 'expired' ? [each.lotId] : [])),
    last: attention.flatMap((each) => (each.kind === 'last' ? [each.presentationId] : [])),
  };
}

function lotView({ memory }: BarnContext, lot: StockLot, wallMs: number): StockLotView | null {
  const found = presentationById(memory.formulary, lot.presentationId);
  if (found === undefined) return null;
  const { medicine, presentation } = found;
  const need = headNeed(medicine, presentation.id, memory.animals, memory.approvals);
  const inPiece = activeInPiece(presentation, lot);
  const onHand = quantity('mg', inPiece.value * lot.onHand.value);
  return {
    id: lot.id,
    presentationId: presentation.id,
    medicine: medicine.name,
    form: presentation.form,
    lot: lot.lot,
    expiry: { ...lot.expiry },
    freshness: freshnessOf(lot, wallMs),
    pieces: lot.onHand.value,
    pieceHolds: presentation.form === 'powder' ? presentation.grossGrams.value : (lot.holds?.value ?? 0),
    proposed: proposedLot(memory.stock, presentation.id, wallMs)?.id === lot.id,
    heads: need === null ? null : headsIn(onHand, need),
    guessed: need?.guessed ?? 0,
    pieceCost: costOfPieces(lot, pieces(1)),
    headCost: need === null ? null : costOfActive(lot, presentation, need.active),
  };
}

/** A lot with what happened to it; `null` for one nobody knows. */
export function stockLotPage(barn: BarnContext, lotId: string): StockLotPage | null {
  const { memory, clock, store } = barn;
  const lot = memory.stock.find(({ id }) => id === lotId);
  const view = lot === undefined ? null : lotView(barn, lot, clock.now().wallMs);
  if (view === null) return null;
  const numberOf = (jugId: string | null): number | null =>
    memory.jugs.find(({ id }) => id === jugId)?.number ?? null;
  return {
    lot: view,
    events: store.stock.eventsOf(lotId, EVENTS).map((event) => eventView(event, numberOf)),
  };
}

function eventView(event: StockEvent, numberOf: (jugId: string | null) => number | null): StockEventView {
  const { id, kind, by } = event;
  return {
    id,
    kind,
    pieces: kind === 'counted' ? event.found.value : event.pieces.value,
    difference: kind === 'counted' ? event.difference : null,
    price: kind === 'received' ? event.price : null,
    jugNumber: kind === 'taken' ? numberOf(event.jugId) : null,
    why: kind === 'thrown-away' ? event.why : null,
    at: rfc3339(event.atMs),
    by,
  };
}
