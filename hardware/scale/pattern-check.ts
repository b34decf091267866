import { isNullable, MAX_PATTERN, parsePattern } from './pattern-parse.ts';
import { type CharacterSet, PatternError, type PatternNode, type PatternRefusal } from './pattern-syntax.ts';

/** The groups that mean something. */
export const PATTERN_GROUPS = ['value', 'unit', 'stable', 'unstable', 'net', 'over'] as const;
/** One of them. */
export type PatternGroup = (typeof PATTERN_GROUPS)[number];

/** An expression that may be used, compiled, with the groups it has; or why it may not. */
export type PatternResult =
  | {
      readonly ok: true;
      /** Its groups have numbers in place of names: named ones would cost an object for each line. */
      readonly expression: RegExp;
      /** The number of each group it has. */
      readonly groups: ReadonlyMap<PatternGroup, number>;
    }
  | { readonly ok: false; readonly why: PatternRefusal };

/**
 * Compiles an expression for whole lines, if it can be matched without ever going back.
 *
 * At each character at most one way to go on may fit (the deterministic expressions of Brüggemann-Klein and Wood,
 * "One-unambiguous regular languages", 1998). An engine that tries one way after the other then needs time linear
 * in the line: every other way fails at its first character.
 */
export function compilePattern(source: string): PatternResult {
  if (source.length === 0 || source.length > MAX_PATTERN) return { ok: false, why: 'too-long' };
  try {
    const node = parsePattern(source);
    const groups = groupsOf(node);
    refuseAmbiguity(node);
    return { ok: true, expression: new RegExp(`^(?:${withoutNames(source)})$`), groups };
  } catch (error) {
    if (error instanceof PatternError) return { ok: false, why: error.why };
    // What our parser takes and the engine does not is no expression either.
    if (error instanceof SyntaxError) return { ok: false, why: 'syntax' };
    throw error;
  }
}

/** What may hold a bracket that opens no group is passed over. */
const NAME_OR_LITERAL = /\\.|\[(?:\\.|[^\]\\])*\]|\(\?<[a-z]+>/g;

function withoutNames(source: string): string {
  return source.replace(NAME_OR_LITERAL, (found) => (found.startsWith('(') ? '(' : found));
}

function groupsOf(node: PatternNode): ReadonlyMap<PatternGroup, number> {
  const numbers = namesIn(node);
  const names = numbers.filter((name) => name !== null);
  const groups = new Map(
    PATTERN_GROUPS.filter((name) => names.includes(name)).map((name) => [name, numbers.indexOf(name) + 1]),
  );
  if (groups.size !== names.length) throw new PatternError('unknown-group');
  if (!groups.has('value')) throw new PatternError('no-value');
  if (!groups.has('stable') && !groups.has('unstable')) throw new PatternError('no-stability');
  return groups;
}

/** The names of all groups that capture, in the order in which they open; `null` for one without a name. */
function namesIn(node: PatternNode): (string | null)[] {
  switch (node.kind) {
    case 'set':
      return [];
    case 'row':
    case 'choice':
      return node.parts.flatMap(namesIn);
    case 'group':
      return [...(node.captures ? [node.name] : []), ...namesIn(node.inner)];
    case 'repeat':
      return namesIn(node.inner);
  }
}

/** Each character of an expression is a place; `follow` lists the places that may come next. */
interface Places {
  readonly sets: CharacterSet[];
  readonly follow: Set<number>[];
}

interface Edges {
  readonly first: readonly number[];
  readonly last: readonly number[];
}

function refuseAmbiguity(node: PatternNode): void {
  const places: Places = { sets: [], follow: [] };
  const { first } = edgesOf(node, places);
  for (const ways of [new Set(first), ...places.follow]) {
    let taken = 0n;
    for (const place of ways) {
      const set = places.sets[place] ?? 0n;
      if ((taken & set) !== 0n) throw new PatternError('ambiguous');
      taken |= set;
    }
  }
}

function edgesOf(node: PatternNode, places: Places): Edges {
  switch (node.kind) {
    case 'set': {
      const place = places.sets.push(node.set) - 1;
      places.follow.push(new Set());
      return { first: [place], last: [place] };
    }
    case 'row':
      return rowEdges(node.parts, places);
    case 'choice': {
      // Two empty branches are two ways to go on over nothing.
      if (node.parts.filter(isNullable).length > 1) throw new PatternError('ambiguous');
      const edges = node.parts.map((part) => edgesOf(part, places));
      return { first: edges.flatMap((one) => one.first), last: edges.flatMap((one) => one.last) };
    }
    case 'group':
      return edgesOf(node.inner, places);
    case 'repeat':
      return repeatEdges(node, places);
  }
}

function rowEdges(parts: readonly PatternNode[], places: Places): Edges {
  let first: readonly number[] = [];
  let last: readonly number[] = [];
  let empty = true;
  for (const part of parts) {
    const edges = edgesOf(part, places);
    join(last, edges.first, places);
    const nullable = isNullable(part);
    if (empty) first = [...first, ...edges.first];
    last = nullable ? [...last, ...edges.last] : edges.last;
    empty &&= nullable;
  }
  return { first, last };
}

/** A counted repetition is written out, so that `a{2,4}a` is found out as well; what it repeats is never nothing. */
function repeatEdges(node: Extract<PatternNode, { kind: 'repeat' }>, places: Places): Edges {
  const { inner, least, most } = node;
  const copies = Array.from({ length: most ?? Math.max(1, least) }, () => edgesOf(inner, places));
  for (const [at, copy] of copies.entries()) join(copies[at - 1]?.last ?? [], copy.first, places);
  const end = copies.at(-1);
  if (most === null && end !== undefined) join(end.last, end.first, places);
  return {
    first: copies[0]?.first ?? [],
    last: copies.slice(Math.max(0, least - 1)).flatMap((copy) => copy.last),
  };
}

function join(from: readonly number[], to: readonly number[], places: Places): void {
  for (const place of from) {
    for (const next of to) places.follow[place]?.add(next);
  }
}
