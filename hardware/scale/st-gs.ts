import type { ScaleRole } from '../../core/weighing/reading.ts';
import { LineSplitter } from '../serial/line-splitter.ts';
import { type Decoded, type FrameFault, readingOf, refuse } from './decoded.ts';
import { type ScaleProfile, STREAMED } from './profile.ts';
import { isMassUnit, shownMass } from './shown-mass.ts';

/** Layout A: the sign stands right behind the second word, seven characters of weight, a comma, two of unit. */
const LAYOUT_A = /^(ST|US|OL),(GS|NT|US)([ -])([^,]{6}[^ ,]),( [A-Za-z%]|[A-Za-z%]{2})$/;
/** Layout B: a comma before the sign, then the weight, then the unit with or without blanks before it. */
const LAYOUT_B = /^(ST|US|OL),(GS|NT|US),([+-])([ \d.-]*)([^ \d.,-][^ \d.,]*)$/;
const HEADER = /^(?:ST|US|OL),(?:GS|NT|US)(?:,[+-]|[ -])/;

/** The longest line: an 18-byte layout or a wide layout B with the unit set apart. */
const MAX_LENGTH = 40;
/** Widths of the weight field of layout B, both included; makers differ, one scale does not. */
const MIN_FIELD = 4;
const MAX_FIELD = 15;

/**
 * The lines of three words and a weight (`ST,GS,+  1.240kg`) that a scale sends by itself, in both printed layouts.
 *
 * Lines without a word for gross or net are refused: such a weight might have a tare taken off.
 * Source: four published manuals and lines seen in use (facts §1.3).
 */
export const ST_GS: ScaleProfile = {
  ...STREAMED,
  id: 'st-gs',
  title: 'Continuous lines (ST,GS,+  1.240kg)',
  width: 'steady',
  createFramer: () => new LineSplitter({ maxLength: MAX_LENGTH, synchronised: false }),
  decode,
};

function decode(text: string, role: ScaleRole, atMs: number): Decoded {
  const match = LAYOUT_A.exec(text) ?? LAYOUT_B.exec(text);
  if (match === null) return refuse(whyNoLayout(text), text);
  const [, first = '', second = '', sign = '', field = '', unitField = ''] = match;
  const unit = unitField.trim();
  if (!isMassUnit(unit)) return refuse('unknown-unit', text);
  if (field.length < MIN_FIELD || field.length > MAX_FIELD) return refuse('bad-width', text);
  const negative = sign === '-';
  // Blanks stand before the number, and in layout B between it and the unit.
  const shown = shownMass(field.trim(), negative, unit);
  const overloaded = first === 'OL';
  if (shown === null && !(overloaded && /^[ -]+$/.test(field))) return refuse('bad-number', text);
  return readingOf(
    {
      shown,
      // Some scales say in the second word that they move; what they then weigh is taken for gross.
      moving: first === 'US' || second === 'US',
      net: second === 'NT',
      fault: overloaded ? (negative ? 'under' : 'over') : null,
      unit,
    },
    { text, role, atMs },
  );
}

function whyNoLayout(text: string): FrameFault {
  if (!HEADER.test(text)) return 'bad-header';
  return /[A-Za-z]$/.test(text) ? 'bad-number' : 'unknown-unit';
}
