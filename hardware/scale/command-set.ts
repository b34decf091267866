import { LineSplitter } from '../serial/line-splitter.ts';
import { type Decoded, readingOf, refuse, type Seen } from './decoded.ts';
import { polled, type ScaleProfile, wire } from './profile.ts';
import { NO_TARE, type ScaleSettings } from './settings.ts';
import { isMassUnit, shownMass } from './shown-mass.ts';

/** `S`, `S` for steady or `D` for dynamic, ten of weight, a blank, the unit. */
const WEIGHT = /^S ([SD]) (.{10}) (\S{1,5})$/;
const TARE = /^(?:TA A|T S|TI [SD]) (.{10}) (\S{1,5})$/;
const NUMBER = /^ *(-?)([\d.]+)$/;
/** Out of range, with the blank or, in another manual, with an I in its place. */
const RANGE = /^S[ I]([+-])$/;
const LINE_OF_LETTERS = /^[A-Z@][A-Z0-9]{0,4}(?: .*)?$/;

/**
 * The set of commands around `S`, asked with `SI` CR LF: `S S     100.00 g` steady, `S D` dynamic.
 *
 * No word tells gross from net. Source: published manuals of a terminal and a balance, and public notes (facts §1.4);
 * the replies to tare commands are common knowledge.
 */
export function commandSet(settings: ScaleSettings): ScaleProfile {
  const { noTare = false } = settings;
  return {
    ...polled('SI\r\n'),
    id: 's-si',
    title: 'Command set, asked (SI, S S     100.00 g)',
    commands: { zero: wire('Z\r\n'), tare: wire('T\r\n'), clearTare: wire('TAC\r\n') },
    // Without its k, `kg` is a good unit too: only the length of the line betrays it.
    width: 'steady',
    settings: [NO_TARE],
    createFramer: () => new LineSplitter({ maxLength: 64, synchronised: false }),
    decode: (text, role, atMs) => decode({ text, role, atMs, vouched: noTare }),
  };
}

/**
 * The same, told once to repeat by itself with `SIR` CR LF, about fifteen times a second.
 *
 * The command is said again every two seconds, since a scale that was switched off and on has forgotten it.
 */
export function commandSetRepeating(settings: ScaleSettings): ScaleProfile {
  return {
    ...commandSet(settings),
    id: 's-sir',
    title: 'Command set, repeating (SIR, S S     100.00 g)',
    poll: { bytes: wire('SIR\r\n'), everyMs: 2000, replyWithinMs: 400 },
  };
}

function decode(seen: Seen): Decoded {
  const { text } = seen;
  if (text === 'ES' || text === 'EL') return refuse('command-refused', text);
  if (text === 'ET') return refuse('command-garbled', text);
  const none = { shown: null, moving: false, net: null, unit: null } as const;
  const range = RANGE.exec(text);
  if (range !== null) return readingOf({ ...none, fault: range[1] === '+' ? 'over' : 'under' }, seen);
  // The scale is busy, or found no steady weight in its time.
  if (text === 'S I') return readingOf({ ...none, fault: 'not-displayed' }, seen);
  const weight = WEIGHT.exec(text);
  const match = weight ?? TARE.exec(text);
  if (match === null) return refuse(whyNot(text), text);
  const field = match.at(-2) ?? '';
  const unit = match.at(-1) ?? '';
  if (!isMassUnit(unit)) return refuse('unknown-unit', text);
  const number = NUMBER.exec(field);
  const shown = number === null ? null : shownMass(number[2] ?? '', number[1] === '-', unit);
  if (shown === null) return refuse('bad-number', text);
  if (weight === null) return { kind: 'tare', mass: shown.mass };
  return readingOf({ ...none, shown, moving: weight[1] === 'D', unit }, seen);
}

function whyNot(text: string) {
  if (/^S [SD] /.test(text)) return 'bad-width';
  if (/^(?:Z|ZI|T|TI|TA|TAC|S) [IL+-]$/.test(text)) return 'command-refused';
  return LINE_OF_LETTERS.test(text) ? 'not-a-weight' : 'bad-header';
}
