import { JUMP_MS } from '../../core/clock/trust.ts';
import type { ClockCorrections } from './clock-corrections.ts';
import type { Db } from './open-store.ts';

interface DatedLine {
  readonly sequence: number;
  readonly at_ms: number;
  readonly trusted: number;
  readonly board_start: string | null;
  readonly board_since_ms: number | null;
}

/** Finds the treatments and jugs that what was told of a start of a board bears on. */
export function createDatedLines(db: Db, clock: Pick<ClockCorrections, 'spokenAgainst'>) {
  const newestFirst = db.prepare<[], DatedLine>(
    `SELECT sequence, at_ms, trusted, board_start, board_since_ms FROM book_lines
     WHERE kind = 'treatment' AND received IS NULL ORDER BY line DESC`,
  );
  const indexed = db
    .prepare<[string], number>(
      `SELECT sequence FROM book_lines INDEXED BY lines_of_a_start
       WHERE board_start = ? AND (received = 1 OR trusted = 0)`,
    )
    .pluck();
  const numbered = db.prepare<[string], number>('SELECT sequence FROM treatments WHERE id = ?').pluck();
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
    /**
     * Numbers of the treatments that a further word on a start may date anew: those of the start, and those that a word on it
     * spoke against.
     */
    by(start: string): number[] {
      return [
        ...new Set([
          ...ofStart(start).map(({ sequence }) => sequence),
          ...indexed.all(start),
          ...clock.spokenAgainst(start).flatMap((id) => numbered.get(id) ?? []),
        ]),
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
