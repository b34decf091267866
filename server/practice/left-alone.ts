import type { TimerHandle, Timers } from '../../hardware/serial/timers.ts';

/** A practice round nobody touched for this long ends: the next who comes wants to work. Our own guard. */
export const LEFT_ALONE_MS = 10 * 60_000;

/** Ends a practice round that was left alone. */
export interface LeftAlone {
  /** Hears that somebody is there. */
  touched(): void;
  stop(): void;
}

/** Begins to wait; `end` is called once. */
export function whenLeftAlone(timers: Timers, end: () => void): LeftAlone {
  let waiting: TimerHandle = timers.set(end, LEFT_ALONE_MS);
  return {
    touched() {
      timers.clear(waiting);
      waiting = timers.set(end, LEFT_ALONE_MS);
    },
    stop: () => timers.clear(waiting),
  };
}
