/** A point in the running time of a board: exact within one start of it, whatever its clock says. */
export interface BoardTime {
  /** Names one start of the board. */
  readonly start: string;
  /** Milliseconds since that start. */
  readonly sinceMs: number;
}

/**
 * The time of an event, handed in by whoever saw it: `core` has no clock of its own.
 *
 * Lengths of time (how old is this tag read?) come from `uptimeMs`, which never jumps; dates come from `wallMs`,
 * which a bad clock may set wrong.
 */
export interface Moment {
  /** Milliseconds since the program started, never running backwards. */
  readonly uptimeMs: number;
  /** Milliseconds since 1970-01-01 UTC, as far as the board knows. */
  readonly wallMs: number;
  /** The board's running time, where it is known; it outlasts a new start of the program. */
  readonly board?: BoardTime;
}

/** An hour in milliseconds. */
export const HOUR_MS = 3_600_000;

/** A day of 24 hours in milliseconds. */
export const DAY_MS = 24 * HOUR_MS;
