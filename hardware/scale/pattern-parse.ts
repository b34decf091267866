import {
  ANY,
  type CharacterSet,
  escaped,
  PatternError,
  type PatternNode,
  range,
  setOf,
} from './pattern-syntax.ts';

/** The longest expression taken, in characters. */
export const MAX_PATTERN = 200;
/** The most times a counted repetition may ask for. */
const MAX_TIMES = 32;
const GROUP_NAME = /^\(\?<([a-z]+)>/;
const TIMES = /^\{(\d{1,2})(?:(,)(\d{1,2})?)?\}/;

/**
 * Takes an expression apart: characters, `.`, classes, groups, `|`, and `? * + {n,m}` without a lazy mark.
 *
 * Throws `PatternError` for anything else: looking around, back-references, anchors, and repetitions of repetitions
 * (an optional group may hold one).
 */
export function parsePattern(source: string): PatternNode {
  if (source.length === 0 || source.length > MAX_PATTERN) throw new PatternError('too-long');
  const parser = new PatternParser(source);
  const node = parser.choice();
  if (!parser.atEnd) throw new PatternError('syntax');
  return node;
}

class PatternParser {
  readonly #source: string;
  #at = 0;

  constructor(source: string) {
    this.#source = source;
  }

  get atEnd(): boolean {
    return this.#at === this.#source.length;
  }

  choice(): PatternNode {
    const parts = [this.#row()];
    while (this.#take('|')) parts.push(this.#row());
    return { kind: 'choice', parts };
  }

  #row(): PatternNode {
    const parts: PatternNode[] = [];
    while (!this.atEnd && !'|)'.includes(this.#next())) parts.push(this.#repeated());
    return { kind: 'row', parts };
  }

  #repeated(): PatternNode {
    const inner = this.#atom();
    const [least, most] = this.#times() ?? [1, 1];
    if (least === 1 && most === 1) return inner;
    // A lazy or doubled mark changes how far to go back; none of it is needed where there is one way on.
    if (!this.atEnd && '?*+{'.includes(this.#next())) throw new PatternError('syntax');
    const optional = least === 0 && most === 1;
    if (isNullable(inner) || (!optional && holdsRepeat(inner))) throw new PatternError('nested-repeat');
    return { kind: 'repeat', inner, least, most };
  }

  #times(): readonly [number, number | null] | null {
    if (this.#take('?')) return [0, 1];
    if (this.#take('*')) return [0, null];
    if (this.#take('+')) return [1, null];
    const match = TIMES.exec(this.#rest());
    if (match === null) return null;
    this.#at += match[0].length;
    const least = Number(match[1]);
    const most = match[2] === undefined ? least : match[3] === undefined ? null : Number(match[3]);
    if (least > MAX_TIMES || (most !== null && (most > MAX_TIMES || most < Math.max(1, least)))) {
      throw new PatternError('syntax');
    }
    return [least, most];
  }

  #atom(): PatternNode {
    const character = this.#next();
    this.#at += 1;
    switch (character) {
      case '(':
        return this.#group();
      case '[':
        return { kind: 'set', set: this.#class() };
      case '.':
        return { kind: 'set', set: ANY };
      case '\\':
        this.#at += 1;
        return { kind: 'set', set: escaped(this.#source[this.#at - 1]) };
      case '^':
      case '$':
      case '*':
      case '+':
      case '?':
      case '{':
      case '}':
      case ']':
        throw new PatternError('syntax');
      default:
        return { kind: 'set', set: setOf(character) };
    }
  }

  #group(): PatternNode {
    const opening = `(${this.#rest()}`;
    if (/^\(\?<?[=!]/.test(opening)) throw new PatternError('lookaround');
    const name = GROUP_NAME.exec(opening);
    const bare = opening.startsWith('(?:');
    if (name !== null) this.#at += name[0].length - 1;
    else if (bare) this.#at += 2;
    else if (opening.startsWith('(?')) throw new PatternError('syntax');
    const inner = this.choice();
    if (!this.#take(')')) throw new PatternError('syntax');
    return { kind: 'group', captures: !bare, name: name?.[1] ?? null, inner };
  }

  #class(): CharacterSet {
    const negated = this.#take('^');
    let set = 0n;
    while (!this.#take(']')) {
      const from = this.#next();
      this.#at += 1;
      if (from === '\\') {
        set |= escaped(this.#source[this.#at]);
        this.#at += 1;
      } else if (this.#next() === '-' && this.#source[this.#at + 1] !== ']') {
        const to = this.#source[this.#at + 1] ?? '';
        if (to === '\\' || to === '') throw new PatternError('syntax');
        set |= range(from, to);
        this.#at += 2;
      } else {
        set |= setOf(from);
      }
    }
    const all = negated ? ANY & ~set : set;
    if (all === 0n) throw new PatternError('syntax');
    return all;
  }

  /** The character here; there must be one. */
  #next(): string {
    const character = this.#source[this.#at];
    if (character === undefined) throw new PatternError('syntax');
    return character;
  }

  #take(character: string): boolean {
    if (this.#source[this.#at] !== character) return false;
    this.#at += 1;
    return true;
  }

  #rest(): string {
    return this.#source.slice(this.#at);
  }
}

/** Whether the node can stand for nothing at all. */
export function isNullable(node: PatternNode): boolean {
  switch (node.kind) {
    case 'set':
      return false;
    case 'row':
      return node.parts.every(isNullable);
    case 'choice':
      return node.parts.some(isNullable);
    case 'group':
      return isNullable(node.inner);
    case 'repeat':
      return node.least === 0 || isNullable(node.inner);
  }
}

function holdsRepeat(node: PatternNode): boolean {
  switch (node.kind) {
    case 'set':
      return false;
    case 'row':
    case 'choice':
      return node.parts.some(holdsRepeat);
    case 'group':
      return holdsRepeat(node.inner);
    case 'repeat':
      return true;
  }
}
