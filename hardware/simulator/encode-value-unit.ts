import { type Face, fieldOf, type Indication } from './indication.ts';

/** One line; out of range it shows nothing but dashes. Throws `RangeError` for more than eleven characters of number. */
export function encodeValueUnit(indication: Indication, face: Face): Uint8Array {
  const number = indication.range === 'within' ? fieldOf(indication, face, 11) : '-'.repeat(11);
  return Buffer.from(`${number} ${face.unit}${indication.moving ? ' ?' : ''}\r\n`, 'latin1');
}
