import { type Mass, type MassUnit, massFrom } from '../../core/quantity/mass.ts';
import { wire } from './profile.ts';
import { isMassUnit } from './shown-mass.ts';

/** One weighing range: what it carries at most and in which steps it counts. */
export interface SmaRange {
  /** The unit shown in it: a scale that can switch tells each of its units. */
  readonly unit: MassUnit;
  /** `null` where the digits may or may not carry the decimals the line speaks of: both are printed. */
  readonly capacity: Mass | null;
  readonly division: Mass;
}

/** What a scale says of itself. A field it leaves away is `null` or empty. */
export interface SmaAbout {
  /** Level and revision of the protocol, such as `2/1.0`. */
  readonly protocol: string | null;
  readonly maker: string | null;
  readonly model: string | null;
  readonly revision: string | null;
  readonly serial: string | null;
  readonly type: string | null;
  /** More than one for a scale of several intervals. */
  readonly ranges: readonly SmaRange[];
  /** The letters of the level-2 commands it knows, such as `HPTMCR`. */
  readonly commands: string;
}

/** Where a dialogue stands: what was learned, and the question to ask next; `null` when it is over. */
export interface SmaDialogue {
  readonly about: SmaAbout;
  readonly ask: Uint8Array | null;
  /** Lines taken so far; 24 (included) end a dialogue that does not end by itself. */
  readonly lines: number;
  readonly next: 'B' | 'N';
}

const MAX_LINES = 24;
const LINE = /^([A-Z]{2}[A-Z ]):(.{0,25})$/;
/** Unit, capacity, count-by, place of the decimal point from the right. */
const CAPACITY = /^([a-z]{1,2})[ _]{0,2}:(\d{1,9}(?:\.\d{1,5})?):(\d{1,3}):([0-5])$/;
const UNKNOWN: SmaAbout = {
  protocol: null,
  maker: null,
  model: null,
  revision: null,
  serial: null,
  type: null,
  ranges: [],
  commands: '',
};

/**
 * Starts one of the two dialogues: `about` (LF `A` CR, then `B`) or, on level 2, `information` (LF `I` CR, then `N`).
 *
 * Source: manuals that reproduce the protocol (facts §1.1).
 */
export function startSmaDialogue(which: 'about' | 'information', about: SmaAbout = UNKNOWN): SmaDialogue {
  const [first, next] = which === 'about' ? (['A', 'B'] as const) : (['I', 'N'] as const);
  return { about, ask: question(first), lines: 0, next };
}

/** Takes one frame of the scale, less its framing, and says what to ask next. Pure; a weight between is passed over. */
export function smaDialogueHeard(dialogue: SmaDialogue, text: string): SmaDialogue {
  if (dialogue.ask === null) return dialogue;
  const lines = dialogue.lines + 1;
  // Some scales stop after their revision: then the next question is refused, and that is the end.
  if (text === '?' || text === '!' || text.startsWith('END:') || lines >= MAX_LINES) {
    return { ...dialogue, lines, ask: null };
  }
  const match = LINE.exec(text);
  if (match === null) return { ...dialogue, lines };
  const about = learned(dialogue.about, match[1] ?? '', (match[2] ?? '').trim());
  return { ...dialogue, about, lines, ask: question(dialogue.next) };
}

function learned(about: SmaAbout, field: string, value: string): SmaAbout {
  switch (field) {
    case 'SMA':
      return { ...about, protocol: value };
    case 'MFG':
      return { ...about, maker: value };
    case 'MOD':
      return { ...about, model: value };
    case 'REV':
      return { ...about, revision: value };
    case 'SN ':
      return { ...about, serial: value };
    case 'TYP':
      return { ...about, type: value };
    case 'CMD':
      return /^[A-Z]*$/.test(value) ? { ...about, commands: value } : about;
    case 'CAP': {
      const range = rangeOf(value);
      return range === null ? about : { ...about, ranges: [...about.ranges, range] };
    }
    default:
      return about;
  }
}

function rangeOf(value: string): SmaRange | null {
  const match = CAPACITY.exec(value);
  if (match === null) return null;
  const [, unit = '', capacity = '', countBy = '', place = ''] = match;
  if (!isMassUnit(unit) || Number(countBy) === 0) return null;
  const plain = place === '0' || capacity.includes('.');
  return {
    unit,
    capacity: plain ? massFrom(Number(capacity), unit) : null,
    division: massFrom(Number(countBy) / 10 ** Number(place), unit),
  };
}

function question(letter: string): Uint8Array {
  return wire(`\n${letter}\r`);
}
