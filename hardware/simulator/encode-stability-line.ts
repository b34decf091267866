import { digitsOf, type Face, fitted, type Indication, isNegative } from './indication.ts';

/** The answer to a command, echoed in three characters. Throws `RangeError` for more than nine of number. */
export function encodeStabilityLine(indication: Indication, face: Face, command = 'SI'): Uint8Array {
  const { range, moving } = indication;
  const mark = range === 'over' ? '^' : range === 'under' ? 'v' : moving ? '?' : ' ';
  const number = fitted(digitsOf(indication, face), 9);
  const sign = isNegative(indication) ? '-' : ' ';
  const line = `${command.padEnd(3)} ${mark} ${sign}${number} ${face.unit.padEnd(3)}`;
  return Buffer.from(`${line}\r\n`, 'latin1');
}
