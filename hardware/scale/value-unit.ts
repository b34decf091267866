import type { ScaleRole } from '../../core/weighing/reading.ts';
import { LineSplitter } from '../serial/line-splitter.ts';
import { type Decoded, readingOf, refuse } from './decoded.ts';
import { type ScaleProfile, STREAMED } from './profile.ts';
import { isMassUnit, shownMass } from './shown-mass.ts';

const LINE = /^( *)(-?)([\d.]+) {1,3}([A-Za-z%]{1,3})( {1,4}\?)? {0,4}$/;
/** The weight stands in so many characters, both included; makers print ten, eleven or twelve. */
const MIN_FIELD = 8;
const MAX_FIELD = 12;

/**
 * Lines of a weight, its unit and a `?` where it moves or is below the least weight (`       0.01 g ?`).
 *
 * A word behind the unit is not known and refused. No word tells gross from net, so such a scale stands on the
 * bench only. Source: two published manuals (facts §1.3).
 */
export const VALUE_UNIT: ScaleProfile = {
  ...STREAMED,
  id: 'value-unit',
  title: 'Weight, unit and ? (       0.01 g ?)',
  // The question mark, and with some the blanks in its place, make lines in motion longer.
  width: 'steady-each',
  createFramer: () => new LineSplitter({ maxLength: 32, synchronised: false }),
  decode,
};

function decode(text: string, role: ScaleRole, atMs: number): Decoded {
  const match = LINE.exec(text);
  if (match === null) return refuse('bad-header', text);
  const [, blanks = '', sign = '', digits = '', unit = '', motion] = match;
  if (!isMassUnit(unit)) return refuse('unknown-unit', text);
  const field = blanks.length + sign.length + digits.length;
  if (field < MIN_FIELD || field > MAX_FIELD) return refuse('bad-width', text);
  const shown = shownMass(digits, sign === '-', unit);
  return readingOf({ shown, moving: motion !== undefined, net: null, unit }, { text, role, atMs });
}
