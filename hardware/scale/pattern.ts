import type { ScaleRole } from '../../core/weighing/reading.ts';
import { LineSplitter } from '../serial/line-splitter.ts';
import { type Decoded, readingOf, refuse, type Seen } from './decoded.ts';
import { compilePattern, type PatternGroup, type PatternResult } from './pattern-check.ts';
import { type ScaleProfile, STREAMED } from './profile.ts';
import { NO_TARE, type ScaleSettings, type SettingNote } from './settings.ts';
import { isMassUnit, type ShownMass, shownMass } from './shown-mass.ts';

/** The longest line the expression is tried on, in characters. */
const MAX_LINE = 64;
/** Sign, then blanks or none, then digits with at most one point. */
const NUMBER = /^ *([+-]?) *([\d.]+)$/;
const NOTES: readonly SettingNote[] = [
  { name: 'pattern', required: true, what: 'The expression that reads one line, with its groups.' },
  { name: 'unit', required: false, what: 'The unit the scale shows, where the lines do not name it.' },
  NO_TARE,
];
const UNSET: PatternResult = { ok: false, why: 'too-long' };

/**
 * Lines of a scale whose format is not among the others, read by an expression from the configuration.
 *
 * The expression fits the whole line. Its groups: `value`; `unit`; `stable` or `unstable`, of which one must exist;
 * `net`; `over`. A group counts where it fits at least one character. Without the group `net` no weight is taken for
 * gross on the platform. Lines end with CR LF and have at most 64 characters; one scale sends one length.
 */
export function patternFormat(settings: ScaleSettings): ScaleProfile {
  const compiled = settings.pattern === undefined ? UNSET : compilePattern(settings.pattern);
  return {
    ...STREAMED,
    id: 'pattern',
    title: 'Lines read by an expression of your own',
    width: 'steady-each',
    settings: NOTES,
    needsProof: true,
    createFramer: () => new LineSplitter({ maxLength: MAX_LINE, synchronised: false }),
    decode: (text, role, atMs) => decode(text, role, atMs, compiled, settings),
  };
}

function decode(
  text: string,
  role: ScaleRole,
  atMs: number,
  compiled: PatternResult,
  settings: ScaleSettings,
): Decoded {
  if (!compiled.ok) return refuse('not-set-up', text);
  if (text.length > MAX_LINE) return refuse('bad-width', text);
  const { expression, groups } = compiled;
  const match = expression.exec(text);
  if (match === null) return refuse('bad-header', text);
  const textOf = (name: PatternGroup): string => match[groups.get(name) ?? match.length] ?? '';
  const told = (name: PatternGroup): boolean => textOf(name) !== '';
  const seen: Seen = { text, role, atMs, vouched: settings.noTare ?? false };
  const net = groups.has('net') ? told('net') : null;
  // Where both groups exist both must agree that the weight stands still.
  const still = (!groups.has('stable') || told('stable')) && !told('unstable');
  const base = { moving: !still, net } as const;
  if (told('over')) return readingOf({ ...base, shown: null, fault: 'over', unit: null }, seen);
  const named = told('unit') ? textOf('unit').trim() : null;
  if (named !== null && !isMassUnit(named)) return refuse('unknown-unit', text);
  if (named !== null && settings.unit !== undefined && named !== settings.unit) {
    return refuse('unit-mismatch', text);
  }
  const unit = named ?? settings.unit;
  if (unit === undefined) return refuse('unit-not-set', text);
  return readingOf({ ...base, shown: massOf(textOf('value'), unit), unit: named }, seen);
}

function massOf(value: string, unit: 'kg' | 'g' | 'lb' | 'oz'): ShownMass | null {
  const match = NUMBER.exec(value);
  return match === null ? null : shownMass(match[2] ?? '', match[1] === '-', unit);
}
