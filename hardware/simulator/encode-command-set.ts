import { type Face, fieldOf, type Indication } from './indication.ts';

/** The answer to `S`, `SI` or `SIR`. Throws `RangeError` where the number needs more than ten characters. */
export function encodeCommandSet(indication: Indication, face: Face): Uint8Array {
  const { range, moving } = indication;
  const text =
    range === 'within'
      ? `S ${moving ? 'D' : 'S'} ${fieldOf(indication, face, 10)} ${face.unit}`
      : `S ${range === 'over' ? '+' : '-'}`;
  return Buffer.from(`${text}\r\n`, 'latin1');
}
