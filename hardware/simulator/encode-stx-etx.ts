import { digitsOf, type Face, fitted, type Indication, isNegative } from './indication.ts';

/** One frame with a single letter behind the weight. Throws `RangeError` for more than seven characters of number. */
export function encodeStxEtxShort(indication: Indication, face: Face): Uint8Array {
  const { moving, range } = indication;
  const letter = range === 'within' && moving ? 'M' : kindOf(indication);
  return framed(`${signed(indication, face)}${letter}`);
}

/** One frame with four marks and the unit. Throws `RangeError` for more than seven characters of number. */
export function encodeStxEtxLong(indication: Indication, face: Face): Uint8Array {
  const { moving, steps } = indication;
  const marks = `${kindOf(indication)}${moving ? 'M' : ' '}${steps === 0 ? 'Z' : ' '}-`;
  return framed(`${signed(indication, face)}${marks}${(moving ? '' : face.unit).padEnd(3)}`);
}

function kindOf({ range, net }: Indication): string {
  if (range !== 'within') return range === 'over' ? 'O' : 'U';
  return net ? 'N' : 'G';
}

function signed(indication: Indication, face: Face): string {
  return `${isNegative(indication) ? '-' : ' '}${fitted(digitsOf(indication, face), 7)}`;
}

function framed(text: string): Uint8Array {
  return Buffer.from(`\x02${text}\x03`, 'latin1');
}
