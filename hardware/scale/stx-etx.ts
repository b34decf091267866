import type { MassUnit } from '../../core/quantity/mass.ts';
import { BracketFramer } from '../serial/bracket-framer.ts';
import { type Decoded, readingOf, refuse, type Seen } from './decoded.ts';
import { type ScaleProfile, STREAMED } from './profile.ts';
import { NO_TARE, type ScaleSettings, UNIT_REQUIRED, UNIT_WHILE_MOVING } from './settings.ts';
import { isMassUnit, shownMass } from './shown-mass.ts';

const BRACKETS = { begin: 0x02, end: 0x03, maxFrame: 24 } as const;
/** Sign, seven of weight, one letter that stands for all there is to say. */
const SHORT = /^([ -])(.{7})([GNUOME])$/;
const SHORT_WIDTH = 9;
/** Sign, seven of weight, kind, motion, zero, a dash, three of unit that stay blank in motion. */
const LONG = /^([ -])(.{7})([GNUOE])([ M])([ Z])-(.{3})$/;
const LONG_WIDTH = 15;

/**
 * Frames of sign, weight and one letter between STX and ETX, sent by themselves.
 *
 * The unit is not sent. `M` for motion stands in the place of `G` or `N`, so that whether a moving weight is net is
 * not told. Source: one published manual, format 1 (facts §1.3).
 */
export function stxEtxShort(settings: ScaleSettings): ScaleProfile {
  const { noTare = false } = settings;
  return {
    ...STREAMED,
    id: 'stx-etx-short',
    title: 'STX, sign, weight, one letter, ETX',
    width: 'fixed',
    settings: [UNIT_REQUIRED, NO_TARE],
    needsProof: true,
    createFramer: () => new BracketFramer(BRACKETS),
    decode: (text, role, atMs) => decodeShort({ text, role, atMs, vouched: noTare }, settings.unit),
  };
}

/**
 * Frames of sign, weight, four marks and the unit between STX and ETX, sent by themselves.
 *
 * The unit stays blank in motion and is then the one set. Source: one published manual, format 2 (facts §1.3).
 */
export function stxEtxLong(settings: ScaleSettings): ScaleProfile {
  return {
    ...STREAMED,
    id: 'stx-etx-long',
    title: 'STX, sign, weight, four marks, unit, ETX',
    width: 'fixed',
    settings: [UNIT_WHILE_MOVING],
    createFramer: () => new BracketFramer(BRACKETS),
    decode: (text, role, atMs) => decodeLong({ text, role, atMs }, settings.unit),
  };
}

function decodeShort(seen: Seen, unit: MassUnit | undefined): Decoded {
  const { text } = seen;
  if (text.length !== SHORT_WIDTH) return refuse('bad-width', text);
  const match = SHORT.exec(text);
  if (match === null) return refuse('bad-header', text);
  if (unit === undefined) return refuse('unit-not-set', text);
  const [, sign = '', field = '', letter = ''] = match;
  const fault = faultOf(letter);
  const shown = shownMass(field.trimStart(), sign === '-', unit);
  // Gross or net is told only by the letters G and N.
  const net = letter === 'G' ? false : letter === 'N' ? true : null;
  return readingOf({ shown, moving: letter === 'M', net, fault, unit: null }, seen);
}

function decodeLong(seen: Seen, set: MassUnit | undefined): Decoded {
  const { text } = seen;
  if (text.length !== LONG_WIDTH) return refuse('bad-width', text);
  const match = LONG.exec(text);
  if (match === null) return refuse('bad-header', text);
  const [, sign = '', field = '', kind = '', motion = '', zero = '', unitField = ''] = match;
  const named = unitField.trim();
  if (named !== '' && !isMassUnit(named)) return refuse('unknown-unit', text);
  if (named !== '' && set !== undefined && named !== set) return refuse('unit-mismatch', text);
  const fault = faultOf(kind);
  // A steady weight without its unit is not of this format.
  if (named === '' && motion === ' ' && fault === null) return refuse('unknown-unit', text);
  const unit = named === '' ? set : named;
  if (unit === undefined && fault === null) return refuse('unit-not-set', text);
  const shown = unit === undefined ? null : shownMass(field.trimStart(), sign === '-', unit);
  return readingOf(
    {
      shown,
      moving: motion === 'M',
      net: kind === 'N',
      zero: zero === 'Z',
      fault,
      unit: named === '' ? null : named,
    },
    seen,
  );
}

function faultOf(letter: string): 'under' | 'over' | 'not-displayed' | null {
  if (letter === 'U') return 'under';
  if (letter === 'O') return 'over';
  return letter === 'E' ? 'not-displayed' : null;
}
