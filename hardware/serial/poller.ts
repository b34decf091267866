import type { TimerHandle, Timers } from './timers.ts';

/** How a device that speaks only when asked is asked. */
export interface Poll {
  readonly bytes: Uint8Array;
  /** The time from one question to the next, if the reply comes sooner. */
  readonly everyMs: number;
  /** A question without a reply for this long is given up, and the next one asked. */
  readonly replyWithinMs: number;
}

/** Asks over and over, never twice at a time. */
export interface Poller {
  /** To be called for every frame that may be a reply. */
  replied(): void;
  /** Ends the asking; a question still open is forgotten. */
  stop(): void;
}

/** Starts asking at once; one poller for one connection. */
export function startPoller(poll: Poll, write: (bytes: Uint8Array) => void, timers: Timers): Poller {
  let askedAt = 0;
  let open = false;
  let timer: TimerHandle | null = null;

  function wake(run: () => void, afterMs: number): void {
    if (timer !== null) timers.clear(timer);
    timer = timers.set(run, afterMs);
  }
  function ask(): void {
    askedAt = timers.now();
    open = true;
    wake(ask, poll.replyWithinMs);
    write(poll.bytes);
  }
  ask();

  return {
    replied() {
      if (!open) return;
      open = false;
      wake(ask, Math.max(0, poll.everyMs - (timers.now() - askedAt)));
    },
    stop() {
      open = false;
      if (timer !== null) timers.clear(timer);
      timer = null;
    },
  };
}
