/** A word that knew of others when it was said. */
export interface Said {
  readonly id: string;
  /** A hybrid clock, as `clockText` writes it. */
  readonly clock: string;
  /** The ids of the words it came after, as far as its kiosk knew them. */
  readonly after: readonly string[];
}

/**
 * Puts words in one order on every kiosk that knows the same of them: none before one it came after, and of those that did
 * not know of each other the one with the earlier clock, or the smaller id, first.
 *
 * What was known counts before the clock, so that a kiosk years ahead has no later word than the one that answers it. Words
 * that each came after the other, which no kiosk writes, are ordered by their clocks.
 */
export function causalOrder<T extends Said>(words: readonly T[]): T[] {
  const waiting = [...words].sort(byClock);
  const ids = new Set(waiting.map(({ id }) => id));
  const placed = new Set<string>();
  const order: T[] = [];
  while (waiting.length > 0) {
    const ready = waiting.findIndex(({ after }) => after.every((id) => placed.has(id) || !ids.has(id)));
    const [next] = waiting.splice(Math.max(0, ready), 1) as [T];
    placed.add(next.id);
    order.push(next);
  }
  return order;
}

/** Orders words by their clocks, and those of one clock by their ids. */
export function byClock(one: Pick<Said, 'id' | 'clock'>, other: Pick<Said, 'id' | 'clock'>): number {
  return compareText(one.clock, other.clock) || compareText(one.id, other.id);
}

function compareText(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
