import type { ClockCorrection } from '../../core/clock/correction.ts';
import { JUMP_MS } from '../../core/clock/trust.ts';
import type { Db } from './open-store.ts';

interface DatedLine {
  readonly sequence: number;
  readonly at_ms: number;
  readonly trusted: number;
  readonly board_start: string | null;
  readonly board_since_ms: number | null;
}

/** Finds the treatments and jugs that a correction of the clock bears on. */
export function createDatedLines(db: Db) {
  const newestFirst = db.prepare<[], DatedLine>(
    `SELECT sequence, at_ms, trusted, board_start, board_since_ms FROM book_lines
     WHERE kind = 'treatment' AND received IS NULL ORDER BY line DESC`,
  );
  const ahead = db
    .prepare<[number], number>(
      `SELECT sequence FROM book_lines WHERE kind = 'treatment' AND trusted = 1 AND filed_at_ms > ?`,
    )
    .pluck();
  const jugOwed = db
    .prepare<[object], number>(
      `SELECT 1 FROM jugs WHERE board_start = @start
         AND (clock_trusted = 0 OR abs(mixed_at_ms - board_since_ms - @startedAt) > ${JUMP_MS}) LIMIT 1`,
    )
    .pluck();

  /** The treatments of one start, which are the newest: starts follow each other. */
  function ofStart(start: string): DatedLine[] {
    const found: DatedLine[] = [];
    for (const line of newestFirst.iterate()) {
      if (line.board_start === start) found.push(line);
      else if (line.board_start !== null) break;
    }
    return found;
  }

  return {
    /** Numbers of the treatments that a word on the clock dates anew: of its start, and dated later than it. */
    by({ board, isMs }: ClockCorrection): number[] {
      return [
        ...new Set([...ofStart(board.start).map(({ sequence }) => sequence), ...ahead.all(isMs + JUMP_MS)]),
      ];
    },
    isOwed(start: string, startedAtMs: number): boolean {
      const agrees = ({ at_ms, trusted, board_since_ms }: DatedLine) =>
        trusted === 1 && Math.abs(at_ms - (board_since_ms ?? 0) - startedAtMs) <= JUMP_MS;
      return !ofStart(start).every(agrees) || jugOwed.get({ start, startedAt: startedAtMs }) !== undefined;
    },
    startedAtMs(start: string): number | null {
      const newest = newestFirst.get();
      if (newest === undefined || newest.trusted === 0 || newest.board_start !== start) return null;
      return newest.at_ms - (newest.board_since_ms ?? 0);
    },
  };
}
