/** What `set` gives and `clear` takes. */
export type TimerHandle = NodeJS.Timeout | number;

/** A clock and its alarms, handed in so that tests can move time by hand. */
export interface Timers {
  /** Milliseconds of uptime; never runs backwards. */
  now(): number;
  /** Runs once after so many milliseconds (0 included), never at once. */
  set(run: () => void, afterMs: number): TimerHandle;
  /** Cancels; a timer that has run already is ignored. */
  clear(handle: TimerHandle): void;
}

/** The timers of this process; `now` counts from its start. */
export function systemTimers(): Timers {
  return {
    now: () => performance.now(),
    set: (run, afterMs) => setTimeout(run, afterMs),
    clear: (handle) => clearTimeout(handle),
  };
}
