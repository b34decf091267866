import { DAY_MS } from '../moment.ts';
import type { StockLot } from './lot.ts';

/** How long before its printed month is over a lot is told of, in days (our own guard). */
export const SOON_DAYS = 60;

/** Whether a lot may be used, and how long. */
export type Freshness = 'good' | 'soon' | 'expired';

/** How a lot stands by its printed month. */
export function freshnessOf({ expiresAtMs }: Pick<StockLot, 'expiresAtMs'>, wallMs: number): Freshness {
  if (wallMs >= expiresAtMs) return 'expired';
  return wallMs >= expiresAtMs - SOON_DAYS * DAY_MS ? 'soon' : 'good';
}
