import type { ScaleRole } from '../../core/weighing/reading.ts';
import { LineSplitter } from '../serial/line-splitter.ts';
import { type Decoded, readingOf, refuse } from './decoded.ts';
import { type ScaleProfile, STREAMED } from './profile.ts';
import { isMassUnit, shownMass } from './shown-mass.ts';

/** Two letters, a comma, a sign, eight of weight, three of unit. */
const WIDTH = 15;
const LINE = /^(ST|US|OL|QT),([+-])(.{8})(.{3})$/;
/** Some scales show an overload as a number too large, without a unit. */
const OVERLOAD = /^OL,([+-])9{6}E\+19$/;

/**
 * Lines of 17 bytes (`ST,+00012.34  g`) that a scale sends by itself, with `ST` stable, `US` moving, `OL` out of range.
 *
 * No word tells gross from net, so such a scale stands on the bench only; on the platform each line is refused.
 * A count (`QT`) is no weight. Source: three published manuals of one family (facts §1.3).
 */
export const HEADER_COMMA: ScaleProfile = {
  ...STREAMED,
  id: 'header-comma',
  title: 'Continuous 17-byte lines (ST,+00012.34  g)',
  width: 'fixed',
  createFramer: () => new LineSplitter({ maxLength: 20, synchronised: false }),
  decode,
};

function decode(text: string, role: ScaleRole, atMs: number): Decoded {
  const seen = { text, role, atMs };
  const out = OVERLOAD.exec(text);
  if (out !== null) {
    const fault = out[1] === '-' ? 'under' : 'over';
    return readingOf({ shown: null, moving: false, net: null, fault, unit: null }, seen);
  }
  if (text.length !== WIDTH) return refuse('bad-width', text);
  const match = LINE.exec(text);
  if (match === null) return refuse('bad-header', text);
  const [, header = '', sign = '', field = '', unitField = ''] = match;
  if (header === 'QT') return refuse('not-a-weight', text);
  const unit = unitField.trimStart();
  if (!isMassUnit(unit)) return refuse('unknown-unit', text);
  const negative = sign === '-';
  const shown = shownMass(field, negative, unit);
  // Digits are padded with zeros, so a blank among them is a byte gone wrong.
  if (shown === null) return refuse('bad-number', text);
  const fault = header === 'OL' ? (negative ? 'under' : 'over') : null;
  return readingOf({ shown, moving: header === 'US', net: null, fault, unit }, seen);
}
