import { type MassUnit, massFrom } from '../../core/quantity/mass.ts';
import type { ScaleFault } from '../../core/weighing/reading.ts';
import { TailFramer } from '../serial/tail-framer.ts';
import { type Decoded, readingOf, refuse, type Seen } from './decoded.ts';
import { polled, type ScaleProfile, wire } from './profile.ts';
import { NO_TARE, type ScaleSettings } from './settings.ts';
import { type ShownMass, shownMass } from './shown-mass.ts';

/** LF and ETX around a weight, where there is one, and two or three status bytes; CR and LF between differ by maker. */
const FRAME = {
  end: 0x03,
  maxFrame: 32,
  shape: /\n(?:[ -~]{1,16}\r\n?)?[ -~]{1,4}\r?$/,
} as const;
const WITH_WEIGHT = /^([^\r]+)\r\n?S?([0-?p-~]{2,3})\r?$/;
const STATUS_ONLY = /^(S?)([0-?p-~]{2,3})\r?$/;
const ONE_UNIT = /^( *-?)([\d.]+) ?([A-Za-z]{1,2})$/;
const POUNDS_AND_OUNCES = /^ ?(\d{1,4}) ?(?:LB|lb) *([01]?\d\.\d) ?(?:OZ|oz)$/;
/** Units are printed `lb` by some and `LB` by others, but never `Lb`. */
const UNITS: ReadonlyMap<string, MassUnit> = new Map(
  (['kg', 'g', 'lb', 'oz'] as const).flatMap((unit) => [
    [unit, unit],
    [unit.toUpperCase(), unit],
  ]),
);
/** What older scales show in place of digits. */
const FILLED: readonly (readonly [RegExp, ScaleFault])[] = [
  [/^ ?\^+[A-Za-z]{2}$/, 'over'],
  [/^ ?_+[A-Za-z]{2}$/, 'under'],
  [/^ ?-+[A-Za-z]{2}$/, 'zero-error'],
];

/** Where the low bit of the first status byte says "in motion" and its neighbour "at zero". */
export type Polarity = 'one' | 'zero';

/** The status bytes, taken apart. */
interface Status {
  readonly moving: boolean;
  readonly zero: boolean;
  /** `null` where there is no third byte, which alone tells. */
  readonly net: boolean | null;
  readonly fault: ScaleFault | null;
}

/**
 * Replies of a weight and two or three status bytes, asked with `W` CR, in all three layouts that manuals print.
 *
 * Manuals contradict each other about the motion bit: in three of them a one means that the weight moves and that it
 * is at zero, in one a zero does. Hence two formats, and a proof with a known weight. Some scales send the status
 * alone where there is no valid weight. Source: published manuals of five scales (facts §1.2).
 */
export function weightStatus(polarity: Polarity): (settings: ScaleSettings) => ScaleProfile {
  return ({ noTare = false }) => ({
    ...polled('W\r'),
    id: polarity === 'one' ? 'weight-status' : 'weight-status-inverse',
    title:
      polarity === 'one'
        ? 'Weight and status bytes (W CR), 1 = moving'
        : 'Weight and status bytes (W CR), 0 = moving',
    commands: { zero: wire('Z\r') },
    width: 'steady',
    settings: [NO_TARE],
    needsProof: true,
    createFramer: () => new TailFramer(FRAME),
    decode: (text, role, atMs) => decode({ text, role, atMs, vouched: noTare }, polarity),
  });
}

function decode(seen: Seen, polarity: Polarity): Decoded {
  const { text } = seen;
  const match = WITH_WEIGHT.exec(text);
  if (match === null) return withoutWeight(seen, polarity);
  const status = statusOf(match[2] ?? '', polarity);
  if (status === null) return refuse('bad-header', text);
  const body = match[1] ?? '';
  const weight = weightOf(body);
  if (typeof weight !== 'string') {
    // Written out: a spread of two objects is the slowest thing in this file by far.
    const { moving, zero, net, fault } = status;
    return readingOf({ moving, zero, net, fault, shown: weight.shown, unit: weight.unit }, seen);
  }
  const filled = FILLED.find(([form]) => form.test(body))?.[1];
  return filled === undefined
    ? refuse(weight, text)
    : readingOf({ ...status, shown: null, fault: filled, unit: null }, seen);
}

function withoutWeight(seen: Seen, polarity: Polarity): Decoded {
  const { text } = seen;
  if (/^\?\r?$/.test(text)) return refuse('command-refused', text);
  const alone = STATUS_ONLY.exec(text);
  if (alone === null) return refuse('bad-header', text);
  return statusAlone(alone[1] === 'S', statusOf(alone[2] ?? '', polarity), seen);
}

/** Without a weight there is a reading only where the status says why, and only in the layout that marks it with S. */
function statusAlone(marked: boolean, status: Status | null, seen: Seen): Decoded {
  if (status === null) return refuse('bad-header', seen.text);
  const fault = status.fault ?? (status.moving ? 'not-displayed' : null);
  if (!marked || fault === null) return refuse('not-a-weight', seen.text);
  return readingOf({ ...status, fault, shown: null, unit: null }, seen);
}

/** The second byte says with bit 6 whether a third follows; the high half is otherwise that of a digit. */
function statusOf(bytes: string, polarity: Polarity): Status | null {
  const [first, second] = [bytes.charCodeAt(0), bytes.charCodeAt(1)];
  const third = bytes.length > 2 ? bytes.charCodeAt(2) : null;
  if (((second & 0x40) !== 0) !== (third !== null)) return null;
  if (third !== null && (third & 0x40) !== 0) return null;
  const flipped = polarity === 'one' ? first : first ^ 0b11;
  const broken = (first & 0b1100) !== 0 || (second & 0b1100) !== 0;
  return {
    moving: (flipped & 1) !== 0,
    zero: (flipped & 2) !== 0,
    net: third === null ? null : (third & 4) !== 0,
    fault: broken
      ? 'not-displayed'
      : second & 2
        ? 'over'
        : second & 1
          ? 'under'
          : third !== null && third & 8
            ? 'zero-error'
            : null,
  };
}

interface Weight {
  readonly shown: ShownMass;
  readonly unit: MassUnit;
}

function weightOf(body: string): Weight | 'unknown-unit' | 'bad-number' {
  const match = ONE_UNIT.exec(body);
  if (match === null) {
    const mixed = POUNDS_AND_OUNCES.exec(body);
    return mixed === null ? 'bad-number' : poundsAndOunces(mixed[1] ?? '', mixed[2] ?? '');
  }
  const unit = UNITS.get(match[3] ?? '');
  if (unit === undefined) return 'unknown-unit';
  const shown = shownMass(match[2] ?? '', match[1]?.endsWith('-') ?? false, unit);
  return shown === null ? 'bad-number' : { shown, unit };
}

function poundsAndOunces(pounds: string, ounces: string): Weight | 'bad-number' {
  const rest = shownMass(ounces, false, 'oz');
  if (rest === null || Number(ounces) >= 16) return 'bad-number';
  const mass = { ...rest.mass, value: massFrom(Number(pounds), 'lb').value + rest.mass.value };
  return { shown: { mass, division: rest.division }, unit: 'oz' };
}
