import { digitsOf, type Face, fitted, type Indication, isNegative } from './indication.ts';

/** One line of 17 bytes. Throws `RangeError` where the number needs more than eight characters. */
export function encodeHeaderComma(indication: Indication, face: Face): Uint8Array {
  const header = indication.range !== 'within' ? 'OL' : indication.moving ? 'US' : 'ST';
  const number = fitted(digitsOf(indication, face), 8).replaceAll(' ', '0');
  const line = `${header},${isNegative(indication) ? '-' : '+'}${number}${face.unit.padStart(3)}`;
  return Buffer.from(`${line}\r\n`, 'latin1');
}
