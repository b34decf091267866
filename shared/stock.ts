import { z } from 'zod';
import { THROWN_AWAY } from '../core/stock/event.ts';
import { CURRENCIES } from '../core/stock/money.ts';
import { intentId as id, ref } from './refs.ts';

/** A currency prices can be entered in. */
export const Currency = z.enum(CURRENCIES);
/** A currency prices can be entered in. */
export type Currency = z.infer<typeof Currency>;

/** The last month printed on a packet or a bottle; it counts from 1. */
export const ExpiryMonth = z.strictObject({
  year: z.number().int().min(2020).max(2099),
  month: z.number().int().min(1).max(12),
});
/** The last month printed. */
export type ExpiryMonth = z.infer<typeof ExpiryMonth>;

/** Money in minor units of its currency; a whole number unless it is a share of a price. */
export const MoneyView = z.strictObject({ currency: z.string(), minor: z.number() });
/** Money. */
export type MoneyView = z.infer<typeof MoneyView>;

/** A lot of which something is on hand. */
export const StockLotView = z.strictObject({
  id: z.string(),
  presentationId: z.string(),
  medicine: z.string(),
  form: z.enum(['powder', 'liquid']),
  /** The number printed; `null` where none could be read. */
  lot: z.string().nullable(),
  expiry: ExpiryMonth,
  freshness: z.enum(['good', 'soon', 'expired']),
  /** Packets or bottles on hand; half a packet is 0.5. */
  pieces: z.number(),
  /** Powder in a packet in grams, or what a bottle holds in mL. */
  pieceHolds: z.number(),
  /** Whether it is the one to use first of its presentation. */
  proposed: z.boolean(),
  /** How many animals of this herd it is enough for; `null` where no animal has a rule for it. */
  heads: z.number().int().nullable(),
  /** How many of the herd were never weighed and stand in that number by their class. */
  guessed: z.number().int(),
  /** What one packet or bottle cost, and a treatment of the herd's mean; `null` where no price is known. */
  pieceCost: MoneyView.nullable(),
  headCost: MoneyView.nullable(),
});
/** A lot of which something is on hand. */
export type StockLotView = z.infer<typeof StockLotView>;

/** The stock as every screen knows it. */
export const StockView = z.strictObject({
  currency: Currency,
  /** By medicine, of each the one to use first. */
  lots: z.array(StockLotView),
  /** What needs a look: lots past their month, and presentations of which the last piece is here. */
  expired: z.array(z.string()),
  last: z.array(z.string()),
});
/** The stock as every screen knows it. */
export type StockView = z.infer<typeof StockView>;

/** What happened to a lot. */
export const StockEventView = z.strictObject({
  id: z.string(),
  kind: z.enum(['received', 'taken', 'thrown-away', 'counted']),
  pieces: z.number(),
  /** Of a count: what was found less what should have been there. */
  difference: z.number().nullable(),
  price: MoneyView.nullable(),
  /** The number of the jug or bottle it went into. */
  jugNumber: z.number().int().nullable(),
  why: z.enum(THROWN_AWAY).nullable(),
  /** RFC 3339. */
  at: z.string(),
  by: z.string(),
});
/** What happened to a lot. */
export type StockEventView = z.infer<typeof StockEventView>;

/** A lot with what happened to it, newest first: `GET /api/stock/:id`. */
export const StockLotPage = z.strictObject({ lot: StockLotView, events: z.array(StockEventView) });
/** A lot with what happened to it. */
export type StockLotPage = z.infer<typeof StockLotPage>;

/** A number of a lot as it is tapped in. */
const LotNumber = z.string().regex(/^[A-Z0-9-]{1,20}$/);
/** Packets or bottles; parts of one where they are counted. */
const Count = z.number().min(0).max(9999);

/** What a keeper can want of the stock. */
export const STOCK_INTENTS = [
  /** Packets or bottles that came in; of a lot known by its print, more of the same. */
  z.strictObject({
    type: z.literal('stock-receive'),
    id,
    presentationId: ref,
    lot: LotNumber.nullable(),
    expiry: ExpiryMonth,
    /** What a bottle holds, in mL; `null` for a packet. */
    holdsMl: z.number().positive().max(20_000).nullable(),
    pieces: z.number().int().min(1).max(9999),
    /** For all of them, in the smallest unit of the currency set; `null` where it is not told. */
    priceMinor: z.number().int().min(0).max(1_000_000_000).nullable(),
  }),
  z.strictObject({
    type: z.literal('stock-throw-away'),
    id,
    lotId: ref,
    pieces: Count,
    why: z.enum(THROWN_AWAY),
  }),
  /** What a count found; the difference is kept. */
  z.strictObject({ type: z.literal('stock-count'), id, lotId: ref, pieces: Count }),
  z.strictObject({ type: z.literal('set-currency'), id, currency: Currency }),
  /** The lot of the packet in the hand, `null` for one that is not from the stock. */
  z.strictObject({ type: z.literal('mix-lot'), id, lotId: ref.nullable() }),
] as const;
