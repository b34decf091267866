import type { ScaleFault, ScaleRole } from '../../core/weighing/reading.ts';
import { BracketFramer } from '../serial/bracket-framer.ts';
import { type Decoded, readingOf, refuse } from './decoded.ts';
import { polled, type ScaleProfile, wire } from './profile.ts';
import { isMassUnit, type ShownMass, shownMass } from './shown-mass.ts';

/** The reply to a weight command, less its framing: `<s><r><n><m><f>`, ten of weight, three of unit. */
const REPLY_WIDTH = 18;
const HEADER = /^([ ZOUEITe])[123]([GNTgn])([ M]) $/;
const NUMBER = /^ *(-?)([\d.]+)$/;
const DASHES = '----------';
/** Lines about the scale (`SMA:2/1.0`) and the four-character diagnostics. */
const NOT_A_WEIGHT = /^(?:[A-Z]{2}[A-Z ]:.*|[R ][E ][C ][M ])$/;

/** What each status character says is wrong; a blank and `Z` say that all is well. */
const STATUS_FAULTS: Readonly<Record<string, ScaleFault>> = {
  O: 'over',
  U: 'under',
  E: 'zero-error',
  I: 'zero-error',
  T: 'tare-error',
  e: 'not-displayed',
};

/** LF and CR around every frame; a reply is 20 bytes long and a line about the scale 27 at most. */
export const SMA_BRACKETS = { begin: 0x0a, end: 0x0d, maxFrame: 64 } as const;

/**
 * The polled protocol of 20-byte replies between LF and CR, asked with LF `W` CR.
 *
 * Source: the published protocol of 1999, revised 2005, through manuals that reproduce it (facts §1.1). Status
 * `e` and the unit padded with underscores are seen in manuals only. Its second level lets a scale do with a few of
 * the commands: which ones it has, `SmaAbout` learns.
 */
export const SMA: ScaleProfile = {
  ...polled('\nW\r'),
  id: 'sma',
  title: 'Polled, 20-byte replies (LF W CR)',
  commands: { zero: wire('\nZ\r'), tare: wire('\nT\r'), clearTare: wire('\nC\r') },
  width: 'fixed',
  tellsAbout: true,
  createFramer: () => new BracketFramer(SMA_BRACKETS),
  decode,
};

/**
 * The same, asked with LF `H` CR for a weight of ten times the resolution; a level-2 command that not every scale has.
 *
 * `Q` is not asked: one manual calls its reply the resolved weight after a wait, another the displayed one.
 */
export const SMA_HIGH: ScaleProfile = {
  ...SMA,
  ...polled('\nH\r'),
  commands: SMA.commands,
  tellsAbout: true,
  id: 'sma-high',
  title: 'Polled, 20-byte replies, fine (LF H CR)',
};

function decode(text: string, role: ScaleRole, atMs: number): Decoded {
  if (text === '?') return refuse('command-refused', text);
  if (text === '!') return refuse('command-garbled', text);
  if (text.length !== REPLY_WIDTH) {
    return refuse(NOT_A_WEIGHT.test(text) ? 'not-a-weight' : 'bad-width', text);
  }
  const header = HEADER.exec(text.slice(0, 5));
  if (header === null) return refuse('bad-header', text);
  const [, status = '', kind = '', motion = ''] = header;
  const field = text.slice(5, 15);
  const unitText = text.slice(15).replace(/[ _]+$/, '');
  const unit = isMassUnit(unitText) ? unitText : null;
  const blank = field === DASHES || field.trim() === '';
  // A stability wait that ran out sends dashes and no unit at all.
  if (unit === null && !(blank && unitText === '')) return refuse('unknown-unit', text);
  const shown = unit === null ? null : massOf(field, unit);
  const fault = STATUS_FAULTS[status] ?? (status === ' ' && field === DASHES ? 'unstable-timeout' : null);
  if (shown === null && !(blank && fault !== null)) return refuse('bad-number', text);
  if (kind === 'T' && fault === null && shown !== null) return { kind: 'tare', mass: shown.mass };
  return readingOf(
    { shown, moving: motion === 'M', net: kind === 'N' || kind === 'n', zero: status === 'Z', fault, unit },
    { text, role, atMs },
  );
}

function massOf(field: string, unit: 'kg' | 'g' | 'lb' | 'oz'): ShownMass | null {
  const match = NUMBER.exec(field);
  if (match === null || field.endsWith('.')) return null;
  return shownMass(match[2] ?? '', match[1] === '-', unit);
}
