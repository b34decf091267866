import type { ClockCorrection } from '../clock/correction.ts';
import { byClock, causalOrder, type Said } from './causal-order.ts';

/** A word on the clock as its kiosk told it. */
export interface ClockSaid extends Said {
  readonly word: ClockCorrection;
  /** The ids of records its kiosk had written by then, in other starts, under a later date than the word's. */
  readonly ahead: readonly string[];
}

/** What all that was said of clocks comes to. */
export interface ClockWords {
  /** By start of a board, the last word on it: only that counts. */
  readonly byStart: ReadonlyMap<string, ClockCorrection>;
  /** By id of a record that lies ahead of a word that counts, the earliest such time, milliseconds since 1970. */
  readonly wasBefore: ReadonlyMap<string, number>;
}

/**
 * What words on the clock come to, in whatever order they came: the same on every kiosk that holds the same of them.
 *
 * A word dates what was written in its start of a board, and speaks against later dates of its own kiosk only: another
 * kiosk has a clock of its own, and somebody who says the time there.
 */
export function clockWords(said: readonly ClockSaid[]): ClockWords {
  const ofStarts = new Map<string, ClockSaid[]>();
  for (const each of [...said].sort(byClock)) {
    const { start } = each.word.board;
    ofStarts.set(start, [...(ofStarts.get(start) ?? []), each]);
  }
  const byStart = new Map<string, ClockCorrection>();
  const wasBefore = new Map<string, number>();
  for (const [start, ofStart] of ofStarts) {
    const last = causalOrder(ofStart).at(-1) as ClockSaid;
    byStart.set(start, last.word);
    for (const id of last.ahead)
      wasBefore.set(id, Math.min(last.word.isMs, wasBefore.get(id) ?? Number.POSITIVE_INFINITY));
  }
  return { byStart, wasBefore };
}
