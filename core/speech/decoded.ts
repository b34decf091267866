/** One part of the path a search took through a sound: a word, a phone or a silence, in frames of 10 ms, both included. */
export interface PathPart {
  readonly word: string;
  readonly from: number;
  readonly to: number;
  /** How well its frames fit, as a logarithm of likelihood: negative, larger is better. */
  readonly acoustic: number;
}

/** What the three searches made of one stretch of sound; `null` where a search came to no end. */
export interface Decoded {
  readonly frames: number;
  readonly commands: readonly PathPart[] | null;
  readonly rivals: readonly PathPart[] | null;
  readonly phones: readonly PathPart[] | null;
  /** The best of all other read-backs, where a dose was read back and heard again by `otherReadBacks`. */
  readonly others?: readonly PathPart[] | null;
}

/** Whether a part is a word somebody said, and not a silence, a noise or an empty step of the grammar. */
export function isSpoken({ word }: PathPart): boolean {
  return /^[a-z]/.test(word);
}

/** The words of a path as they are written in the grammar: without the mark of a second pronunciation. */
export function wordsOf(path: readonly PathPart[]): string[] {
  return path.filter(isSpoken).map(({ word }) => word.replace(/\(\d+\)$/, ''));
}
