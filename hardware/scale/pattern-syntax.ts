/** Printable ASCII as a set: bit n stands for the character n places after the blank. */
export type CharacterSet = bigint;

/** An expression taken apart. */
export type PatternNode =
  | { readonly kind: 'set'; readonly set: CharacterSet }
  | { readonly kind: 'row'; readonly parts: readonly PatternNode[] }
  | { readonly kind: 'choice'; readonly parts: readonly PatternNode[] }
  | {
      readonly kind: 'group';
      /** Whether the engine gives it a number, as it does to any but `(?:`. */
      readonly captures: boolean;
      readonly name: string | null;
      readonly inner: PatternNode;
    }
  | {
      readonly kind: 'repeat';
      readonly inner: PatternNode;
      readonly least: number;
      /** `null` for any number of times. */
      readonly most: number | null;
    };

/** Why an expression is not taken. */
export type PatternRefusal =
  /** Empty, or longer than 200 characters. */
  | 'too-long'
  /** Not an expression, or one with a construction that is not among the few taken. */
  | 'syntax'
  | 'lookaround'
  | 'back-reference'
  /** A repetition within a repetition. */
  | 'nested-repeat'
  /** At some character there is more than one way to go on, so that matching might go back and forth. */
  | 'ambiguous'
  /** No group named `value`. */
  | 'no-value'
  /** No group named `stable` or `unstable`. */
  | 'no-stability'
  /** A group name that means nothing here, or one given twice. */
  | 'unknown-group';

/** Thrown while an expression is taken apart. */
export class PatternError extends Error {
  override readonly name = 'PatternError';
  readonly why: PatternRefusal;

  constructor(why: PatternRefusal) {
    super(`expression refused: ${why}`);
    this.why = why;
  }
}

const FIRST = 0x20;
const COUNT = 95;
/** Every printable character. */
export const ANY: CharacterSet = (1n << BigInt(COUNT)) - 1n;

/** The set of these characters; throws `PatternError` for one that is not printable ASCII. */
export function setOf(text: string): CharacterSet {
  let set = 0n;
  for (const character of text) {
    const at = character.charCodeAt(0) - FIRST;
    if (character.length !== 1 || at < 0 || at >= COUNT) throw new PatternError('syntax');
    set |= 1n << BigInt(at);
  }
  return set;
}

/** The set from one character to another, both included; throws where the first comes later. */
export function range(from: string, to: string): CharacterSet {
  const [low, high] = [from.charCodeAt(0), to.charCodeAt(0)];
  if (low > high) throw new PatternError('syntax');
  return setOf(String.fromCharCode(...Array.from({ length: high - low + 1 }, (_, at) => low + at)));
}

const DIGITS = range('0', '9');
const WORD = DIGITS | range('a', 'z') | range('A', 'Z') | setOf('_');
/** What a letter behind a backslash stands for; a line holds no white space but blanks. */
const CLASSES: Readonly<Record<string, CharacterSet>> = {
  d: DIGITS,
  D: ANY & ~DIGITS,
  w: WORD,
  W: ANY & ~WORD,
  s: setOf(' '),
  S: ANY & ~setOf(' '),
};

/** The set a character behind a backslash stands for: a class, or a sign of punctuation itself. */
export function escaped(character: string | undefined): CharacterSet {
  if (character === undefined) throw new PatternError('syntax');
  if (/[1-9k]/.test(character)) throw new PatternError('back-reference');
  const known = CLASSES[character];
  if (known !== undefined) return known;
  if (/[A-Za-z0-9]/.test(character)) throw new PatternError('syntax');
  return setOf(character);
}
