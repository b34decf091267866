import type { TimeZone } from '../dosing/local-time.ts';
import type { BoardTime } from '../moment.ts';
import { JUMP_MS } from './trust.ts';

/** Who told what the time is: a person at the screen, a server of time, or whoever set the board's own clock. */
export type ToldBy = 'person' | 'server' | 'board';

/** A word on what the time was at a point of the board's running time. It is a record, and dates others. */
export interface ClockCorrection {
  readonly id: string;
  /** The point it was said at. */
  readonly board: BoardTime;
  /** What the kiosk went by until then, milliseconds since 1970; `null` where that is not known. */
  readonly wasMs: number | null;
  /** What the time was, milliseconds since 1970. */
  readonly isMs: number;
  readonly told: ToldBy;
  readonly by: string;
  /** The farm's zone then, in which days of withdrawal are counted anew. */
  readonly timeZone: TimeZone;
}

/** How a record is dated. */
export interface Dated {
  /** Milliseconds since 1970. */
  readonly atMs: number;
  /** Whether the clock was trusted; if not, the date says nothing. */
  readonly clockTrusted: boolean;
  /** The board's running time; `null` where it is not known. */
  readonly board: BoardTime | null;
}

/** What was told of the clock that bears on one record. */
export interface Told {
  /** The last word on the start of the board that the record was written in; `null` where there is none. */
  readonly ofStart: Pick<ClockCorrection, 'board' | 'isMs'> | null;
  /** The earliest time that a person or a server said it was after the record had been written, on another start; `null` where none did. */
  readonly wasBeforeMs: number | null;
}

/**
 * How a record is dated once the clock was corrected: by the last word on the same start of the board, over the running
 * time between. A date that agrees stands as it was written.
 *
 * A record of another start that is dated later than it was known to be when it stood there already has a date nobody
 * can believe, and none takes its place.
 */
export function redated(written: Dated, { ofStart, wasBeforeMs }: Told): Dated {
  const { atMs, clockTrusted, board } = written;
  if (ofStart !== null && board !== null && board.start === ofStart.board.start) {
    const toldMs = Math.round(ofStart.isMs + (board.sinceMs - ofStart.board.sinceMs));
    if (clockTrusted && Math.abs(toldMs - atMs) <= JUMP_MS) return written;
    return { atMs: toldMs, clockTrusted: true, board };
  }
  const impossible = wasBeforeMs !== null && atMs > wasBeforeMs + JUMP_MS;
  return clockTrusted && impossible ? { ...written, clockTrusted: false } : written;
}
