import type { Store } from '../store/store.ts';
import type { Clock } from './clock.ts';
import type { Memory } from './memory.ts';

/** Tells the clock what the records know of it: what was told in this start of the board, and the dates that are over. */
export function tellClockOfRecords(clock: Clock, store: Store, memory: Memory): void {
  const { board } = clock.now();
  if (board !== undefined) {
    const word = store.clockCorrections.ofStart(board.start);
    const startedAtMs = store.dayBook.startedAtMs(board.start);
    if (word?.told === 'person') clock.tell(word.isMs, word.board.sinceMs);
    else if (word !== null) clock.sawStartAt(word.isMs - word.board.sinceMs);
    else if (startedAtMs !== null) clock.sawStartAt(startedAtMs);
  }
  const latestGivenMs = store.dayBook.latestGivenMs();
  if (latestGivenMs !== null) clock.sawRecordAt(latestGivenMs);
  const checks = [memory.scaleChecks.platform, memory.scaleChecks.bench, ...memory.syringeChecks];
  const jugs = memory.jugs.map(({ mixedAtMs, clockTrusted }) => ({ atMs: mixedAtMs, clockTrusted }));
  for (const dated of [...jugs, ...checks]) if (dated?.clockTrusted) clock.sawRecordAt(dated.atMs);
}
