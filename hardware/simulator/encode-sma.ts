import { digitsOf, type Face, type Indication } from './indication.ts';

const RANGE_STATUS = { over: 'O', under: 'U' } as const;

/** The 20-byte reply to LF `W` CR. Throws `RangeError` where the number needs more than ten characters. */
export function encodeSma(indication: Indication, face: Face): Uint8Array {
  const { steps, range } = indication;
  const status = range === 'within' ? (steps === 0 ? 'Z' : ' ') : RANGE_STATUS[range];
  const number = `${steps < 0 ? '-' : ''}${digitsOf(indication, face)}`.padStart(10);
  if (number.length > 10) throw new RangeError(`${number} does not fit the reply`);
  const header = `${status}1${indication.net ? 'N' : 'G'}${indication.moving ? 'M' : ' '} `;
  return Buffer.from(`\n${header}${number}${face.unit.padEnd(3)}\r`, 'latin1');
}
