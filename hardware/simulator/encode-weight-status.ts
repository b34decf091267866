import { type Face, fieldOf, type Indication } from './indication.ts';

/** Which of the three printed layouts a reply has. */
export type WeightStatusLayout = 'A' | 'B' | 'C';

const FILLING = { over: '^', under: '_' } as const;

/**
 * A weight with three status bytes, a one meaning motion.
 *
 * Layout B sends the status alone where there is no valid weight. Throws `RangeError` for more than seven characters.
 */
export function encodeWeightStatus(
  indication: Indication,
  face: Face,
  layout: WeightStatusLayout,
): Uint8Array {
  const { range, moving, steps } = indication;
  const status = statusOf(indication);
  if (layout === 'B' && (range !== 'within' || moving)) return bytes(`\nS${status}\r\x03`);
  const number = range === 'within' ? fieldOf(indication, face, 7) : FILLING[range].repeat(7);
  const unit = face.unit.padStart(range === 'within' ? 1 : 2, FILLING[range === 'under' ? 'under' : 'over']);
  if (layout === 'A') return bytes(`\n${number}${unit}\r\n${status}\r\x03`);
  if (layout === 'B') return bytes(`\n${number}${unit.toUpperCase()}\r\nS${status}\r\x03`);
  return bytes(`\n${steps < 0 ? '' : ' '}${number}${unit.toUpperCase()}\r${status}\x03`);
}

/** The same with the motion and zero bits the other way round. */
export function invertStatus(reply: Uint8Array): Uint8Array {
  const text = Buffer.from(reply).toString('latin1');
  // The three status bytes stand last, before a CR in some layouts, and the ETX.
  const at = text.slice(0, -1).search(/[0-?][p-~][0-?]\r?$/);
  return bytes(text.slice(0, at) + String.fromCharCode(text.charCodeAt(at) ^ 0b11) + text.slice(at + 1));
}

function statusOf({ moving, steps, range, net }: Indication): string {
  const first = (moving ? 1 : 0) | (steps === 0 && range === 'within' ? 2 : 0);
  const second = range === 'over' ? 2 : range === 'under' ? 1 : 0;
  return String.fromCharCode(0x30 | first, 0x70 | second, 0x30 | (net ? 4 : 0));
}

function bytes(text: string): Uint8Array {
  return Buffer.from(text, 'latin1');
}
