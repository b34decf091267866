import type { Moment } from '../../core/moment.ts';

/** The board's clock, and whether to believe it. */
export interface Clock {
  now(): Moment;
  /** False while the wall clock stands before the program was built or before the newest record. */
  isTrusted(): boolean;
  /** Raises the floor below which the clock is not believed. */
  sawRecordAt(wallMs: number): void;
}

/** The clock of this process. `builtAtMs` is when the program was built, milliseconds since 1970. */
export function systemClock(builtAtMs: number): Clock {
  let floor = builtAtMs;
  return {
    now: () => ({ uptimeMs: performance.now(), wallMs: Date.now() }),
    isTrusted: () => Date.now() >= floor,
    sawRecordAt: (wallMs) => {
      floor = Math.max(floor, wallMs);
    },
  };
}
