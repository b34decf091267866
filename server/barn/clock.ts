import { randomUUID } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { uptime } from 'node:os';
import { type ClockTrust, lookAtClock, sawRecord } from '../../core/clock/trust.ts';
import type { Moment } from '../../core/moment.ts';

/** The board's clock, and whether to believe it. */
export interface Clock {
  now(): Moment;
  /** False while the wall clock stands before what is over, and once it jumped while the kiosk ran. */
  isTrusted(): boolean;
  /** Raises the floor below which the clock is not believed. */
  sawRecordAt(wallMs: number): void;
}

/** Linux names each start of the board here. */
const START = '/proc/sys/kernel/random/boot_id';
/** systemd writes this once a server of time was heard after the start. */
const HEARD_SERVER = '/run/systemd/timesync/synchronized';

/** The clock of this process. `builtAtMs` is when the program was built, milliseconds since 1970. */
export function systemClock(builtAtMs: number): Clock {
  let trust: ClockTrust = { floorMs: builtAtMs, startedAtMs: null };
  const start = nameOfStart();
  // Unlike the process's own time it runs on while a board sleeps.
  const sinceStartMs = () => uptime() * 1000;
  return {
    now: () => ({
      uptimeMs: performance.now(),
      wallMs: Date.now(),
      board: { start, sinceMs: sinceStartMs() },
    }),
    isTrusted() {
      const look = {
        wallMs: Date.now(),
        sinceStartMs: sinceStartMs(),
        setByServer: existsSync(HEARD_SERVER),
      };
      const seen = lookAtClock(trust, look);
      trust = seen.trust;
      return seen.trusted;
    },
    sawRecordAt(wallMs) {
      trust = sawRecord(trust, wallMs);
    },
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
