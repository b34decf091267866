import type { MassUnit } from '../../core/quantity/mass.ts';
import { type LinePiece, piecesOf, withoutNumberSigns } from './line-shape.ts';
import { compilePattern } from './pattern-check.ts';
import { isMassUnit } from './shown-mass.ts';

/** An expression that may read the lines heard. A guess: the keeper chooses, and a known weight proves. */
export interface PatternGuess {
  readonly pattern: string;
  /** The unit word of the lines; `null` where there is none or it varies. */
  readonly unit: MassUnit | null;
  /** Whether the expression reads the unit off each line; otherwise it must be set. */
  readonly unitInLine: boolean;
  /** What stands in a line at rest, and in one that moves; empty where nothing does. */
  readonly rest: string;
  readonly moving: string;
  /** One of the lines. */
  readonly sample: string;
  /** 0 to 1: how cleanly that mark tells values that change from values that stay. */
  readonly confidence: number;
}

/** A line seen less often than this is taken for a broken one. */
const LEAST_SEEN = 2;
/** How many numbers of a line are tried as its weight. */
const NUMBERS_TRIED = 2;
const UNIT_WORDS: Readonly<Record<string, MassUnit>> = { kgs: 'kg', lbs: 'lb', grams: 'g', gr: 'g' };

interface Seen {
  readonly line: string;
  readonly pieces: readonly LinePiece[];
}

/** Where lines differ in their marks: a piece that varies, or one that is there only sometimes. */
interface Marks {
  readonly at: number;
  readonly values: readonly string[];
}

/**
 * Expressions that may read these lines, the likeliest first; empty where none can tell rest from motion.
 *
 * The lines are in the order they were heard, with the weight moved and left alone at least once between them: a mark
 * that changes with the weight is taken for the one of motion. Pure; every expression is one `compilePattern` takes.
 */
export function guessPatterns(lines: readonly string[]): PatternGuess[] {
  const seen = lines
    .map((line) => ({ line, pieces: withoutNumberSigns(piecesOf(line)) }))
    .filter(({ pieces }) => pieces.some(({ kind }) => kind === 'number'));
  const full = longestForm(seen);
  if (full === null) return [];
  const aligned = seen.flatMap((one) => {
    const pieces = alignedTo(full, one.pieces);
    return pieces === null ? [] : [{ line: one.line, pieces }];
  });
  return weightsIn(full, aligned)
    .flatMap((weight) => marksIn(full, aligned).flatMap((marks) => guessesFor(full, aligned, weight, marks)))
    .filter(({ pattern }) => compilePattern(pattern).ok)
    .sort((a, b) => b.confidence - a.confidence);
}

type Aligned = { readonly line: string; readonly pieces: readonly (LinePiece | null)[] };

function formOf(pieces: readonly LinePiece[]): string {
  return pieces.map(({ kind }) => kind[0]).join('');
}

/** The longest form that is no chance find. */
function longestForm(seen: readonly Seen[]): readonly LinePiece[] | null {
  const forms = new Map<string, { count: number; pieces: readonly LinePiece[] }>();
  for (const { pieces } of seen) {
    const form = formOf(pieces);
    forms.set(form, { count: (forms.get(form)?.count ?? 0) + 1, pieces });
  }
  const often = [...forms.values()].filter(({ count }) => count >= LEAST_SEEN);
  return often.reduce<readonly LinePiece[] | null>(
    (longest, { pieces }) => (longest === null || pieces.length > longest.length ? pieces : longest),
    null,
  );
}

/** The pieces of a line in their places in the full form, with at most one place empty; `null` where it is another form. */
function alignedTo(full: readonly LinePiece[], pieces: readonly LinePiece[]): (LinePiece | null)[] | null {
  if (formOf(pieces) === formOf(full)) return [...pieces];
  if (pieces.length !== full.length - 1) return null;
  // From the end: a mark that comes and goes stands behind the number with most.
  for (let gap = full.length - 1; gap >= 0; gap -= 1) {
    if (full[gap]?.kind === 'number') continue;
    if (formOf(full.toSpliced(gap, 1)) === formOf(pieces)) return pieces.toSpliced(gap, 0, null as never);
  }
  return null;
}

/** The places of the numbers that may be the weight, the likeliest first. */
function weightsIn(full: readonly LinePiece[], aligned: readonly Aligned[]): number[] {
  const score = (at: number): number => {
    const texts = aligned.map(({ pieces }) => pieces[at]?.text ?? '');
    const changes = new Set(texts).size > 1 ? 2 : 0;
    const decimals = texts.every((text) => text.includes('.')) ? 2 : 0;
    return changes + decimals + (unitOf(full[at + 1]?.text) === null ? 0 : 3);
  };
  return full
    .flatMap(({ kind }, at) => (kind === 'number' ? [at] : []))
    .sort((a, b) => score(b) - score(a))
    .slice(0, NUMBERS_TRIED);
}

function marksIn(full: readonly LinePiece[], aligned: readonly Aligned[]): Marks[] {
  return full.flatMap(({ kind }, at) => {
    if (kind === 'number') return [];
    const counts = new Map<string, number>();
    for (const { pieces } of aligned) {
      const text = pieces[at]?.text ?? '';
      counts.set(text, (counts.get(text) ?? 0) + 1);
    }
    const values = [...counts].filter(([, count]) => count >= LEAST_SEEN).map(([text]) => text);
    return values.length === 2 ? [{ at, values }] : [];
  });
}

/** Both ways of taking a mark, the one that fits the weights first. */
function guessesFor(
  full: readonly LinePiece[],
  aligned: readonly Aligned[],
  weight: number,
  { at, values }: Marks,
): PatternGuess[] {
  const changing = aligned.map(({ pieces }, index) => {
    const text = pieces[weight]?.text;
    const around = [aligned[index - 1], aligned[index + 1]].filter((one) => one !== undefined);
    return around.some((one) => one.pieces[weight]?.text !== text);
  });
  const shareMoving = (value: string): number => {
    const places = aligned.flatMap(({ pieces }, index) =>
      (pieces[at]?.text ?? '') === value ? [index] : [],
    );
    return places.filter((index) => changing[index]).length / Math.max(1, places.length);
  };
  const [one = '', other = ''] = values;
  const apart = shareMoving(one) - shareMoving(other);
  const unitPiece = full[weight + 1]?.text;
  const common = {
    unit: unitOf(unitPiece),
    unitInLine: unitPiece !== undefined && isMassUnit(unitPiece) && isConstant(aligned, weight + 1),
    sample: aligned.find(({ pieces }) => pieces.every((piece) => piece !== null))?.line ?? '',
  };
  const guess = (rest: string, moving: string, separation: number): PatternGuess => ({
    ...common,
    rest,
    moving,
    confidence: (1 + separation) / 2,
    pattern: expressionFor(full, aligned, { weight, at, rest, moving, unitInLine: common.unitInLine }),
  });
  return [guess(one, other, -apart), guess(other, one, apart)];
}

interface Parts {
  readonly weight: number;
  readonly at: number;
  readonly rest: string;
  readonly moving: string;
  readonly unitInLine: boolean;
}

function expressionFor(full: readonly LinePiece[], aligned: readonly Aligned[], parts: Parts): string {
  const optional = parts.rest === '' || parts.moving === '';
  const between = (at: number): string => {
    // An optional mark takes the blanks behind it along: they must have one place only.
    if (optional && at === parts.at + 1) return '';
    // Only between two numbers, or two words, must there be a blank to tell where one ends.
    return at > 0 && full[at - 1]?.kind === full[at]?.kind && full[at]?.kind !== 'sign' ? ' +' : ' *';
  };
  const expression = full
    .map((_, at) => {
      const blanks = between(at);
      if (at === parts.weight) return `${blanks}(?<value>(?:[+-] *)?${digitsOf(aligned, at)})`;
      if (at === parts.at) return markOf(parts, blanks);
      const texts = new Set(aligned.flatMap(({ pieces }) => pieces[at]?.text ?? []));
      const [text = ''] = texts;
      if (full[at]?.kind === 'number')
        return `${blanks}${texts.size > 1 ? digitsOf(aligned, at) : quoted(text)}`;
      const plain = [...texts].map(quoted).join('|');
      const one = texts.size > 1 ? `(?:${plain})` : plain;
      return at === parts.weight + 1 && parts.unitInLine ? `${blanks}(?<unit>${one})` : `${blanks}${one}`;
    })
    .join('');
  // Some pad their lines with blanks, others put a blank where a mark may stand.
  return optional && parts.at === full.length - 1 ? expression : `${expression} *`;
}

function markOf({ rest, moving }: Parts, blanks: string): string {
  if (rest === '') return ` *(?:(?<unstable>${quoted(moving)}) *)?`;
  if (moving === '') return ` *(?:(?<stable>${quoted(rest)}) *)?`;
  return `${blanks}(?:(?<stable>${quoted(rest)})|(?<unstable>${quoted(moving)}))`;
}

function digitsOf(aligned: readonly Aligned[], at: number): string {
  const texts = aligned.flatMap(({ pieces }) => pieces[at]?.text ?? []);
  if (texts.every((text) => !text.includes('.'))) return '\\d+';
  return texts.every((text) => text.includes('.')) ? '\\d+\\.\\d+' : '\\d+(?:\\.\\d+)?';
}

function isConstant(aligned: readonly Aligned[], at: number): boolean {
  return new Set(aligned.map(({ pieces }) => pieces[at]?.text)).size === 1;
}

function quoted(text: string): string {
  return text.replace(/[^A-Za-z0-9 ]/g, (sign) => `\\${sign}`);
}

function unitOf(word: string | undefined): MassUnit | null {
  const lower = word?.toLowerCase() ?? '';
  return isMassUnit(lower) ? lower : (UNIT_WORDS[lower] ?? null);
}
