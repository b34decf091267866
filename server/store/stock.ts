import { z } from 'zod';
import { millilitres } from '../../core/quantity/volume.ts';
import { type StockChange, type StockEvent, THROWN_AWAY } from '../../core/stock/event.ts';
import type { LotFacts } from '../../core/stock/lot.ts';
import { money } from '../../core/stock/money.ts';
import { pieces } from '../../core/stock/pieces.ts';
import type { Db } from './open-store.ts';

const LotRow = z.strictObject({
  id: z.string(),
  presentation_id: z.string(),
  lot: z.string().nullable(),
  expiry_year: z.int(),
  expiry_month: z.int(),
  expires_at_ms: z.int(),
  holds_ml: z.number().nullable(),
});

const EventRow = z.strictObject({
  id: z.string(),
  lot_id: z.string(),
  kind: z.enum(['received', 'taken', 'thrown-away', 'counted']),
  pieces: z.number(),
  difference: z.number().nullable(),
  price_minor: z.int().nullable(),
  currency: z.string().nullable(),
  jug_id: z.string().nullable(),
  why: z.enum(THROWN_AWAY).nullable(),
  at_ms: z.int(),
  by: z.string(),
  clock_trusted: z.int(),
});

const EVENT = `id, lot_id, kind, pieces, difference, price_minor, currency, jug_id, why, at_ms, by, clock_trusted`;

/** The stock on disk: lots and what happened to them, never edited and never deleted. */
export function createStockStore(db: Db) {
  const lots = db.prepare(
    `SELECT id, presentation_id, lot, expiry_year, expiry_month, expires_at_ms, holds_ml
     FROM stock_lots ORDER BY sequence`,
  );
  const events = db.prepare(`SELECT ${EVENT} FROM stock_events ORDER BY sequence`);
  const eventsOf = db.prepare(
    `SELECT ${EVENT} FROM stock_events WHERE lot_id = ? ORDER BY sequence DESC LIMIT ?`,
  );
  const addLot = db.prepare(
    `INSERT INTO stock_lots (id, presentation_id, lot, expiry_year, expiry_month, expires_at_ms, holds_ml)
     VALUES (@id, @presentationId, @lot, @year, @month, @expiresAtMs, @holdsMl)`,
  );
  const add = db.prepare(
    `INSERT INTO stock_events (${EVENT})
     VALUES (@id, @lotId, @kind, @pieces, @difference, @priceMinor, @currency, @jugId, @why, @atMs, @by, @clockTrusted)`,
  );
  return {
    /** Every lot that ever came in, oldest first. */
    lots: (): LotFacts[] => lots.all().map(toLot),
    /** Everything that happened to the stock, oldest first. */
    events: (): StockEvent[] => events.all().map(toEvent),
    /** The newest events of a lot, newest first, at most so many. */
    eventsOf: (lotId: string, most: number): StockEvent[] => eventsOf.all(lotId, most).map(toEvent),
    /** Writes what is printed on a lot. */
    addLot({ id, presentationId, lot, expiry, expiresAtMs, holds }: LotFacts): void {
      addLot.run({ id, presentationId, lot, ...expiry, expiresAtMs, holdsMl: holds?.value ?? null });
    },
    /** Writes what happened to a lot. */
    add(event: StockEvent): void {
      const { id, lotId, atMs, by, clockTrusted, kind } = event;
      add.run({
        id,
        lotId,
        kind,
        pieces: kind === 'counted' ? event.found.value : event.pieces.value,
        difference: kind === 'counted' ? event.difference : null,
        priceMinor: kind === 'received' ? (event.price?.minor ?? null) : null,
        currency: kind === 'received' ? (event.price?.currency ?? null) : null,
        jugId: kind === 'taken' ? event.jugId : null,
        why: kind === 'thrown-away' ? event.why : null,
        atMs,
        by,
        clockTrusted: clockTrusted ? 1 : 0,
      });
    },
  };
}

function toLot(raw: unknown): LotFacts {
  const row = LotRow.parse(raw);
  return {
    id: row.id,
    presentationId: row.presentation_id,
    lot: row.lot,
    expiry: { year: row.expiry_year, month: row.expiry_month },
    expiresAtMs: row.expires_at_ms,
    holds: row.holds_ml === null ? null : millilitres(row.holds_ml),
  };
}

function toEvent(raw: unknown): StockEvent {
  const row = EventRow.parse(raw);
  return {
    id: row.id,
    lotId: row.lot_id,
    atMs: row.at_ms,
    by: row.by,
    clockTrusted: row.clock_trusted === 1,
    ...changeOf(row),
  };
}

function changeOf(row: z.infer<typeof EventRow>): StockChange {
  const amount = pieces(row.pieces);
  switch (row.kind) {
    case 'received': {
      const { price_minor: minor, currency } = row;
      const price = minor === null || currency === null ? null : money(currency, minor);
      return { kind: 'received', pieces: amount, price };
    }
    case 'taken':
      return { kind: 'taken', pieces: amount, jugId: row.jug_id };
    case 'thrown-away':
      return { kind: 'thrown-away', pieces: amount, why: row.why ?? 'lost' };
    case 'counted':
      return { kind: 'counted', found: amount, difference: row.difference ?? 0 };
  }
}
