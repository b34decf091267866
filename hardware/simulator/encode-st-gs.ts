import { digitsOf, type Face, type Indication } from './indication.ts';

/** Which of the two printed layouts a line has. */
export type StGsLayout = 'A' | 'B';

/** One line with its CR LF. Throws `RangeError` where the number needs more than seven characters. */
export function encodeStGs(indication: Indication, face: Face, layout: StGsLayout): Uint8Array {
  const stability = indication.range !== 'within' ? 'OL' : indication.moving ? 'US' : 'ST';
  const number = digitsOf(indication, face).padStart(7);
  if (number.length > 7) throw new RangeError(`${number} does not fit the line`);
  const negative = indication.steps < 0 || indication.range === 'under';
  const words = `${stability},${indication.net ? 'NT' : 'GS'}`;
  const line =
    layout === 'A'
      ? `${words}${negative ? '-' : ' '}${number},${face.unit.padStart(2)}`
      : `${words},${negative ? '-' : '+'}${number}${face.unit}`;
  return Buffer.from(`${line}\r\n`, 'latin1');
}
