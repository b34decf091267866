import type { ScaleFault } from '../../core/weighing/reading.ts';
import { BracketFramer } from '../serial/bracket-framer.ts';
import { type Decoded, readingOf, refuse, type Seen } from './decoded.ts';
import { polled, type ScaleProfile } from './profile.ts';
import { NO_TARE, type ScaleSettings, UNIT_REQUIRED } from './settings.ts';
import { shownMass } from './shown-mass.ts';

const BRACKETS = { begin: 0x02, end: 0x0d, maxFrame: 16 } as const;
const WEIGHT = /^ *(-?)([\d.]+)$/;
/** A question mark and one byte whose bits 5 and 6 are set. */
const STATUS = /^\?([`-~])$/;
const MIN_WIDTH = 4;
const MAX_WIDTH = 8;

/**
 * Replies of a bare weight between STX and CR, asked with `W`; where there is none, `?` and a status byte.
 *
 * The unit is not sent. Status bits: 0 motion, 1 over, 2 below zero, 3 zero not to be had, 4 centre of zero.
 * Source: three published manuals (facts §1.2, STX variant).
 */
export function stxWeight(settings: ScaleSettings): ScaleProfile {
  const { noTare = false } = settings;
  return {
    ...polled('W'),
    id: 'stx-weight',
    title: 'Bare weight between STX and CR (W)',
    width: 'steady',
    settings: [UNIT_REQUIRED, NO_TARE],
    needsProof: true,
    createFramer: () => new BracketFramer(BRACKETS),
    decode: (text, role, atMs) => decode({ text, role, atMs, vouched: noTare }, settings),
  };
}

function decode(seen: Seen, { unit }: ScaleSettings): Decoded {
  const { text } = seen;
  const told = { moving: false, net: null, shown: null, unit: null } as const;
  const status = STATUS.exec(text);
  if (status !== null) {
    const bits = (status[1] ?? '').charCodeAt(0);
    return readingOf(
      { ...told, moving: (bits & 1) !== 0, zero: (bits & 16) !== 0, fault: faultOf(bits) },
      seen,
    );
  }
  const match = WEIGHT.exec(text);
  if (match === null) return refuse(text.startsWith('?') ? 'bad-header' : 'bad-number', text);
  if (text.length < MIN_WIDTH || text.length > MAX_WIDTH) return refuse('bad-width', text);
  if (unit === undefined) return refuse('unit-not-set', text);
  return readingOf({ ...told, shown: shownMass(match[2] ?? '', match[1] === '-', unit) }, seen);
}

/** A status stands where a weight should: with nothing else to say it still means that there is none. */
function faultOf(bits: number): ScaleFault {
  if (bits & 2) return 'over';
  if (bits & 4) return 'under';
  if (bits & 8) return 'zero-error';
  return 'not-displayed';
}
