import type { Presentation } from '../medicine/presentation.ts';
import { quantity } from '../quantity/quantity.ts';
import type { ActiveAmount } from '../quantity/strength.ts';
import type { StockLot } from './lot.ts';
import type { Pieces } from './pieces.ts';

/** The active in one packet, or in one bottle of a lot. */
export function activeInPiece(presentation: Presentation, { holds }: Pick<StockLot, 'holds'>): ActiveAmount {
  return presentation.form === 'powder'
    ? quantity('mg', 1000 * presentation.activeGrams.value)
    : quantity('mg', presentation.strength.value * (holds?.value ?? 0));
}

/** What a use of the stock cost: minor units of a currency, unrounded so that parts add up; rounded where it is shown. */
export interface Cost {
  readonly currency: string;
  readonly minor: number;
}

/** What so many pieces of a lot cost by what was paid for it; `null` where no price is known. */
export function costOfPieces({ paid }: Pick<StockLot, 'paid'>, used: Pieces): Cost | null {
  if (paid === null || !(paid.pieces.value > 0)) return null;
  return { currency: paid.total.currency, minor: (paid.total.minor * used.value) / paid.pieces.value };
}

/** What an amount of active cost, as one dose of it; `null` where no price is known. */
export function costOfActive(
  lot: Pick<StockLot, 'paid' | 'holds'>,
  presentation: Presentation,
  used: ActiveAmount,
): Cost | null {
  const inPiece = activeInPiece(presentation, lot).value;
  return inPiece > 0 ? costOfPieces(lot, quantity('piece', used.value / inPiece)) : null;
}
