/** Work that follows changes at a pace. */
export interface Paced {
  /** Something changed: the work is done as soon as the pace allows. */
  soon(): void;
  /** Ends it; what was still to come is dropped. */
  stop(): void;
}

/**
 * Does work right after a change, and again `leastMs` later at the earliest: changes in between are met by one more.
 *
 * What changes in one turn of the event loop is one change.
 */
export function paced(work: () => void, leastMs: number): Paced {
  let doneAt = Number.NEGATIVE_INFINITY;
  let waiting: NodeJS.Timeout | null = null;
  return {
    soon() {
      waiting ??= setTimeout(
        () => {
          waiting = null;
          doneAt = performance.now();
          work();
        },
        Math.max(0, doneAt + leastMs - performance.now()),
      );
    },
    stop() {
      if (waiting !== null) clearTimeout(waiting);
    },
  };
}
