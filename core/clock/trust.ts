/** What is known of a wall clock: how far back it may not stand, and how it ran when it was last believed. */
export interface ClockTrust {
  /** The latest that is known to be over: when the program was built, or the newest record. Milliseconds since 1970. */
  readonly floorMs: number;
  /** When the board started by the wall clock as it was last believed, milliseconds since 1970; `null` while it never was. */
  readonly startedAtMs: number | null;
  /** Whether that is a person's word, which is followed whatever the wall clock says until a server of time is heard. */
  readonly isSaid: boolean;
}

/** One look at the clocks of a board. */
export interface ClockLook {
  /** Milliseconds since 1970, as the board has it. */
  readonly wallMs: number;
  /** Milliseconds since the board started, which never jump. */
  readonly sinceStartMs: number;
  /** Whether the board is known to have been told the time by a server of time. */
  readonly setByServer: boolean;
  /** Whether the board has no clock that runs while it is off, and begins with the time it was switched off at. */
  readonly beginsWithSaved: boolean;
}

/** What a look at the clocks told. */
export interface ClockSeen {
  readonly trust: ClockTrust;
  readonly trusted: boolean;
  /** The time to go by, milliseconds since 1970. */
  readonly nowMs: number;
}

/** A wall clock that moved by more than this against the board's running time was set, not drawn nearer (our own guard). */
export const JUMP_MS = 60_000;

/**
 * Whether the wall clock is believed at a look, and what is known of it after.
 *
 * It is not while it stands before what is over, nor while it may be the time that was saved when the board was switched
 * off, nor once it jumped without a server of time to account for it: of two times nobody can say which is right. It is
 * again when it stands where it stood before the jump. Once a person said the time, that runs on with the board.
 */
export function lookAtClock(trust: ClockTrust, look: ClockLook): ClockSeen {
  const { wallMs, sinceStartMs, setByServer, beginsWithSaved } = look;
  const { startedAtMs } = trust;
  const byWall = wallMs - sinceStartMs;
  if (setByServer && wallMs >= trust.floorMs)
    return { trust: { ...trust, startedAtMs: byWall, isSaid: false }, trusted: true, nowMs: wallMs };
  if (trust.isSaid && startedAtMs !== null)
    return { trust, trusted: true, nowMs: startedAtMs + sinceStartMs };
  const jumped = startedAtMs !== null && Math.abs(byWall - startedAtMs) > JUMP_MS;
  const mayBeSaved = startedAtMs === null && beginsWithSaved;
  if (wallMs < trust.floorMs || jumped || mayBeSaved) return { trust, trusted: false, nowMs: wallMs };
  return { trust: { ...trust, startedAtMs: byWall }, trusted: true, nowMs: wallMs };
}

/** Hears of a record whose date is believed: that is over. */
export function sawRecord(trust: ClockTrust, wallMs: number): ClockTrust {
  return wallMs > trust.floorMs ? { ...trust, floorMs: wallMs } : trust;
}

/** Hears of a record of this start of the board whose date is believed, written before the program started anew. */
export function sawStart(trust: ClockTrust, startedAtMs: number): ClockTrust {
  return { ...trust, startedAtMs };
}

/** Takes a person's word on what the time is at a running time. What is dated later was dated wrong. */
export function tellTime(trust: ClockTrust, isMs: number, sinceStartMs: number): ClockTrust {
  return { floorMs: Math.min(trust.floorMs, isMs), startedAtMs: isMs - sinceStartMs, isSaid: true };
}
