import { grams } from '../../core/quantity/mass.ts';
import type { ScaleFault, ScaleRole } from '../../core/weighing/reading.ts';
import { SmaFramer } from '../serial/sma-framer.ts';
import type { Decoded, FrameFault, ScaleProfile } from './profile.ts';
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

/**
 * The polled protocol of 20-byte replies between LF and CR, asked with LF `W` CR.
 *
 * Source: the published protocol of 1999, revised 2005, through manuals that reproduce it (facts §1.1). Status
 * `e` and the unit padded with underscores are seen in manuals only.
 */
export const SMA: ScaleProfile = {
  id: 'sma',
  title: 'Polled, 20-byte replies (LF W CR)',
  defaultBaud: 9600,
  poll: { bytes: Uint8Array.of(0x0a, 0x57, 0x0d), everyMs: 100, replyWithinMs: 400 },
  silentAfterMs: 1000,
  widthVaries: false,
  createFramer: () => new SmaFramer(),
  decode,
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
  const unit = text.slice(15).replace(/[ _]+$/, '');
  const blank = field === DASHES || field.trim() === '';
  // A stability wait that ran out sends dashes and no unit at all.
  if (!isMassUnit(unit) && !(blank && unit === '')) return refuse('unknown-unit', text);
  const shown = isMassUnit(unit) ? massOf(field, unit) : null;
  const fault = STATUS_FAULTS[status] ?? (status === ' ' && field === DASHES ? 'unstable-timeout' : null);
  if (shown === null && !(blank && fault !== null)) return refuse('bad-number', text);
  if (kind === 'T' && fault === null && shown !== null) return { kind: 'tare', mass: shown.mass };
  return {
    kind: 'reading',
    reading: {
      role,
      mass: fault === null && shown !== null ? shown.mass : grams(0),
      // Where the scale shows no digits its step is not known; a gram stands in and is not used.
      division: shown?.division ?? grams(1),
      stability: motion === 'M' ? 'moving' : 'stable',
      net: kind === 'N' || kind === 'n',
      zero: status === 'Z',
      ...(fault !== null && { fault }),
      at: atMs,
    },
  };
}

function massOf(field: string, unit: 'kg' | 'g' | 'lb' | 'oz'): ShownMass | null {
  const match = NUMBER.exec(field);
  if (match === null || field.endsWith('.')) return null;
  return shownMass(match[2] ?? '', match[1] === '-', unit);
}

function refuse(fault: FrameFault, text: string): Decoded {
  return { kind: 'fault', fault, text };
}
