import { digitsOf, type Face, fitted, type Indication, isNegative } from './indication.ts';

/** One line of 16 bytes, the unit blank in motion. Throws `RangeError` for more than eight characters of number. */
export function encodeBlankUnit(indication: Indication, face: Face): Uint8Array {
  const { range, moving } = indication;
  if (range !== 'within') return Buffer.from(`${`      ${range === 'over' ? 'H' : 'L'}`.padEnd(14)}\r\n`);
  const number = fitted(digitsOf(indication, face), 8);
  const unit = (moving ? '' : face.unit).padEnd(3);
  return Buffer.from(`${isNegative(indication) ? '-' : '+'} ${number} ${unit}\r\n`, 'latin1');
}
