import { type Face, fieldOf, type Indication } from './indication.ts';

/** A bare weight, or a status byte where there is none. Throws `RangeError` for more than seven characters. */
export function encodeStxWeight(indication: Indication, face: Face): Uint8Array {
  const { moving, range } = indication;
  const bits = (moving ? 1 : 0) | (range === 'over' ? 2 : 0) | (range === 'under' ? 4 : 0);
  const text = bits === 0 ? fieldOf(indication, face, 7) : `?${String.fromCharCode(0x60 | bits)}`;
  return Buffer.from(`\x02${text}\r`, 'latin1');
}
