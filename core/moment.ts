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
}

/** An hour in milliseconds. */
export const HOUR_MS = 3_600_000;

/** A day of 24 hours in milliseconds. */
export const DAY_MS = 24 * HOUR_MS;
