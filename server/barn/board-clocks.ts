import { randomUUID } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { uptime } from 'node:os';

/** The clocks of a board, and what it tells of them. */
export interface BoardClocks {
  /** Names this start of the board. */
  readonly start: string;
  /** Milliseconds since 1970, as the board has it. */
  wallMs(): number;
  /** Milliseconds since the board started. */
  sinceStartMs(): number;
  /** Milliseconds since the program started. */
  uptimeMs(): number;
  /** Whether a server of time was heard in this start. */
  setByServer(): boolean;
  /** Whether the board has no clock that runs while it is off, and begins with the time it was switched off at. */
  readonly beginsWithSaved: boolean;
}

/** Linux names each start of the board here. */
const START = '/proc/sys/kernel/random/boot_id';
/** systemd writes this once a server of time was heard after the start. */
const HEARD_SERVER = '/run/systemd/timesync/synchronized';
/** Linux lists the clocks here that run while a board is off. */
const CLOCKS = '/sys/class/rtc';
/** Where systemd, and Debian's stand-in for a clock, keep the time a board was switched off at. */
const SAVED_TIMES = ['/var/lib/systemd/timesync/clock', '/etc/fake-hwclock.data'];

/** The clocks of the board this runs on. */
export function boardClocks(): BoardClocks {
  return {
    start: nameOfStart(),
    wallMs: () => Date.now(),
    // Unlike the process's own time it runs on while a board sleeps.
    sinceStartMs: () => uptime() * 1000,
    uptimeMs: () => performance.now(),
    setByServer: () => existsSync(HEARD_SERVER),
    beginsWithSaved: !hasClock() && SAVED_TIMES.some((path) => existsSync(path)),
  };
}

/** A name for this start of the board; where the system has none, one that is this process's alone. */
function nameOfStart(): string {
  try {
    return readFileSync(START, 'utf8').trim();
  } catch {
    return randomUUID();
  }
}

function hasClock(): boolean {
  try {
    return readdirSync(CLOCKS).length > 0;
  } catch {
    return false;
  }
}
