import { massIn } from '../../core/quantity/mass.ts';
import { decimalsOf } from '../../core/quantity/round.ts';
import { digitsOf, type Face, fitted, type Indication, isNegative } from './indication.ts';

/** Bits of the first word by the step in last digits. */
const STEP_BITS: Readonly<Record<number, number>> = { 1: 0b01000, 2: 0b10000, 5: 0b11000 };
const UNIT_BITS = { kg: [0x10, 0], lb: [0, 0], g: [0, 1] } as const;

/**
 * 18 bytes with three status words and a checksum.
 *
 * Throws `RangeError` for a step that is not 1, 2 or 5 in its last digit, a unit other than kg, lb and g, or a number
 * of more than six digits.
 */
export function encodeStatusWords(indication: Indication, face: Face): Uint8Array {
  const step = massIn(face.division, face.unit);
  const decimals = decimalsOf(step);
  const stepBits = STEP_BITS[Math.round(step * 10 ** decimals)];
  const { unit } = face;
  if (stepBits === undefined || unit === 'oz' || decimals > 5) throw new RangeError('no word for this face');
  const [unitB, unitC] = UNIT_BITS[unit];
  const { net, moving, range } = indication;
  const a = 0x20 | stepBits | (decimals + 2);
  const b =
    0x20 |
    unitB |
    (net ? 1 : 0) |
    (isNegative(indication) ? 2 : 0) |
    (range === 'within' ? 0 : 4) |
    (moving ? 8 : 0);
  const digits = fitted(
    digitsOf(indication, face)
      .replace('.', '')
      .replace(/^0+(?=\d)/, ''),
    6,
  );
  const text = `\x02${String.fromCharCode(a, b, 0x20 | unitC)}${digits.replaceAll(' ', '0')}000000\r`;
  return withChecksum(Buffer.from(text, 'latin1'));
}

/** Appends the two's complement of the sum of the low seven bits. */
export function withChecksum(bytes: Uint8Array): Uint8Array {
  const sum = bytes.reduce((total, byte) => total + (byte & 0x7f), 0);
  return Uint8Array.of(...bytes, -sum & 0x7f);
}
