/** What is known of a wall clock: how far back it may not stand, and how it ran when it was last believed. */
export interface ClockTrust {
  /** The latest that is known to be over: when the program was built, or the newest record. Milliseconds since 1970. */
  readonly floorMs: number;
  /** When the board started by the wall clock as it was last believed, milliseconds since 1970; `null` while it never was. */
  readonly startedAtMs: number | null;
}

/** One look at the clocks of a board. */
export interface ClockLook {
  /** Milliseconds since 1970, as the board has it. */
  readonly wallMs: number;
  /** Milliseconds since the board started, which never jump. */
  readonly sinceStartMs: number;
  /** Whether the board is known to have been told the time by a server of time. */
  readonly setByServer: boolean;
}

/** A wall clock that moved by more than this against the board's running time was set, not drawn nearer (our own guard). */
const JUMP_MS = 60_000;

/**
 * Whether the wall clock is believed at a look, and what is known of it after.
 *
 * It is not while it stands before what is over, nor once it jumped without a server of time to account for it: of two
 * times nobody can say which is right. It is again when it stands where it stood before the jump.
 */
export function lookAtClock(
  trust: ClockTrust,
  { wallMs, sinceStartMs, setByServer }: ClockLook,
): { readonly trust: ClockTrust; readonly trusted: boolean } {
  if (wallMs < trust.floorMs) return { trust, trusted: false };
  const startedAtMs = wallMs - sinceStartMs;
  const jumped = trust.startedAtMs !== null && Math.abs(startedAtMs - trust.startedAtMs) > JUMP_MS;
  if (jumped && !setByServer) return { trust, trusted: false };
  return { trust: { ...trust, startedAtMs }, trusted: true };
}

/** Hears of a record: what it is dated by is over. */
export function sawRecord(trust: ClockTrust, wallMs: number): ClockTrust {
  return wallMs > trust.floorMs ? { ...trust, floorMs: wallMs } : trust;
}
