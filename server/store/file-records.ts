import type { createBookLines } from './book-lines.ts';
import type { createBookRecords } from './book-records.ts';
import type { Db } from './open-store.ts';
import type { createUntreatedReader } from './untreated.ts';

/** Files the records of a database that was written before it had lines: all of them, or none. */
export function fileRecords(
  db: Db,
  records: ReturnType<typeof createBookRecords>,
  untreated: ReturnType<typeof createUntreatedReader>,
  lines: ReturnType<typeof createBookLines>,
): void {
  if (db.prepare('SELECT 1 FROM book_lines LIMIT 1').get() !== undefined) return;
  const treatments = db.prepare<[], { sequence: number; given_at_ms: number }>(
    'SELECT sequence, given_at_ms FROM treatments ORDER BY sequence',
  );
  db.transaction(() => {
    let [ended] = untreated.above(0, 1);
    const fileBefore = (atMs: number) => {
      while (ended !== undefined && ended.atMs < atMs) {
        lines.addUntreated(ended.sequence, ended);
        [ended] = untreated.above(ended.sequence, 1);
      }
    };
    for (const { sequence, given_at_ms } of treatments.all()) {
      fileBefore(given_at_ms);
      lines.addTreatment(sequence, records.numbered(sequence));
    }
    fileBefore(Number.POSITIVE_INFINITY);
  })();
}
