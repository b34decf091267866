import { type Quantity, quantity } from '../quantity/quantity.ts';

/** Packets or bottles of one lot; half a packet is 0.5. */
export type Pieces = Quantity<'piece'>;

/** So little of a piece is nothing: sums of weighed shares do not come out even. */
const NOTHING = 1e-6;

/** So many pieces. Throws `RangeError` below zero; what is within rounding of zero is none. */
export function pieces(value: number): Pieces {
  if (!(value >= -NOTHING)) throw new RangeError(`there cannot be ${value} packets or bottles`);
  return quantity('piece', value < NOTHING ? 0 : value);
}

/** No piece. */
export const NO_PIECES: Pieces = pieces(0);

/** Whether the first are more than the second, beyond rounding. */
export function isMore(a: Pieces, b: Pieces): boolean {
  return a.value > b.value + NOTHING;
}

/** Whether these are whole packets or bottles, none of them begun. */
export function isWhole({ value }: Pieces): boolean {
  return Math.abs(value - Math.round(value)) < NOTHING;
}
