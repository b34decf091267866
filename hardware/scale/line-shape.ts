/** One piece of a line: a number, a run of letters, or a single other sign. Blanks lie between pieces. */
export interface LinePiece {
  readonly kind: 'number' | 'word' | 'sign';
  readonly text: string;
  /** Whether blanks stand before it. */
  readonly apart: boolean;
}

const PIECE = /( *)(?:(\d+(?:\.\d+)?)|([A-Za-z]+)|([^ A-Za-z0-9]))/y;

/** Takes a line of printable ASCII apart; all but its blanks is in the pieces. */
export function piecesOf(line: string): LinePiece[] {
  const pieces: LinePiece[] = [];
  PIECE.lastIndex = 0;
  for (let match = PIECE.exec(line); match !== null; match = PIECE.exec(line)) {
    const [, blanks = '', number, word, sign = ''] = match;
    const apart = blanks.length > 0;
    if (number !== undefined) pieces.push({ kind: 'number', text: number, apart });
    else if (word !== undefined) pieces.push({ kind: 'word', text: word, apart });
    else pieces.push({ kind: 'sign', text: sign, apart });
  }
  return pieces;
}

/** A line without the sign of a number: `+` or `-` in front of digits says nothing of the form. */
export function withoutNumberSigns(pieces: readonly LinePiece[]): LinePiece[] {
  return pieces.filter(
    ({ kind, text }, at) => !(kind === 'sign' && /[+-]/.test(text) && pieces[at + 1]?.kind === 'number'),
  );
}
