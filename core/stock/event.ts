import type { Money } from './money.ts';
import type { Pieces } from './pieces.ts';

/** Why packets or bottles were thrown away. */
export const THROWN_AWAY = ['expired', 'spoilt', 'lost'] as const;
/** One of {@link THROWN_AWAY}. */
export type ThrownAway = (typeof THROWN_AWAY)[number];

/** What happened to some of a lot. Never changed afterwards: a mistake is counted anew. */
export type StockChange =
  | { readonly kind: 'received'; readonly pieces: Pieces; readonly price: Money | null }
  /** `jugId` is `null` for powder that went into a mix nobody kept. */
  | { readonly kind: 'taken'; readonly pieces: Pieces; readonly jugId: string | null }
  | { readonly kind: 'thrown-away'; readonly pieces: Pieces; readonly why: ThrownAway }
  /** `difference` is what was found less what should have been there: below zero where some was missing. */
  | { readonly kind: 'counted'; readonly found: Pieces; readonly difference: number };

/** A change with the lot it befell, when, and who said so. */
export type StockEvent = StockChange & {
  readonly id: string;
  readonly lotId: string;
  /** Milliseconds since 1970. */
  readonly atMs: number;
  readonly by: string;
  readonly clockTrusted: boolean;
};
