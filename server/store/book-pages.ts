import type { createBookRecords, NumberedEntry } from './book-records.ts';
import type { Db } from './open-store.ts';
import type { createUntreatedReader, Untreated } from './untreated.ts';

/** What of the day book is asked for; what is left out is not asked about. Times are milliseconds since 1970. */
export interface BookFilter {
  readonly animalId?: string;
  readonly medicineId?: string;
  readonly by?: string;
  /** Filed at this time or later. */
  readonly fromMs?: number;
  /** Filed before this time. */
  readonly toMs?: number;
  /** Treatments, those with a correction beside them, visits that were skipped, or offers that ended. */
  readonly kind?: 'treatment' | 'corrected' | 'skipped' | 'lapsed';
}

/** A place between two lines of the day book. */
export interface BookPlace {
  readonly filedAtMs: number;
  readonly line: number;
}

/** One line of the day book with its record. */
export type BookLine =
  | { readonly kind: 'treatment'; readonly place: BookPlace; readonly entry: NumberedEntry }
  | { readonly kind: 'untreated'; readonly place: BookPlace; readonly untreated: Untreated };

interface LineRow {
  readonly line: number;
  readonly filed_at_ms: number;
  readonly kind: string;
  readonly sequence: number;
}

const KINDS = {
  treatment: `kind = 'treatment'`,
  corrected: 'corrected = 1',
  skipped: `kind <> 'treatment' AND kind = 'skipped'`,
  lapsed: `kind <> 'treatment' AND kind IN ('lapsed', 'not-given')`,
} as const;

/** The index that leaves the fewest lines to look through. */
function indexFor({ animalId, medicineId, by, kind }: BookFilter): string {
  if (animalId !== undefined) return 'lines_of_an_animal';
  if (medicineId !== undefined && by !== undefined) return 'lines_of_a_medicine_by_a_person';
  if (medicineId !== undefined) return 'lines_of_a_medicine';
  if (kind === 'corrected') return 'lines_corrected';
  if (kind === 'skipped' || kind === 'lapsed') return 'lines_without_a_dose';
  return by === undefined ? 'lines_by_day' : 'lines_of_a_person';
}

/** Reads the day book page by page, each page from where the one before ended. */
export function createBookPages(
  db: Db,
  records: Pick<ReturnType<typeof createBookRecords>, 'numbered'>,
  untreated: Pick<ReturnType<typeof createUntreatedReader>, 'numbered'>,
) {
  function linesOf(
    filter: BookFilter,
    from: BookPlace | null,
    oldestFirst: boolean,
    most: number,
  ): LineRow[] {
    const where = [
      filter.animalId !== undefined && 'stood = (SELECT number FROM animals WHERE id = @animalId)',
      filter.medicineId !== undefined && 'medicine = @medicineId',
      filter.by !== undefined && 'by = @by',
      filter.fromMs !== undefined && 'filed_at_ms >= @fromMs',
      filter.toMs !== undefined && 'filed_at_ms < @toMs',
      filter.kind !== undefined && KINDS[filter.kind],
      from !== null && `(filed_at_ms, line) ${oldestFirst ? '>' : '<'} (@filedAtMs, @line)`,
    ].filter((part) => part !== false);
    const order = oldestFirst ? 'ASC' : 'DESC';
    const { kind, ...asked } = filter;
    // Where nothing was given there is no medicine, so its lines need not be looked through.
    if (filter.medicineId !== undefined && (kind === 'skipped' || kind === 'lapsed')) return [];
    return db
      .prepare<[object], LineRow>(
        `SELECT line, filed_at_ms, kind, sequence FROM book_lines INDEXED BY ${indexFor(filter)}
         ${where.length === 0 ? '' : `WHERE ${where.join(' AND ')}`}
         ORDER BY filed_at_ms ${order}, line ${order} LIMIT @most`,
      )
      .all({ ...asked, ...from, most });
  }

  function read({ line, filed_at_ms, kind, sequence }: LineRow): BookLine {
    const place = { filedAtMs: filed_at_ms, line };
    return kind === 'treatment'
      ? { kind, place, entry: records.numbered(sequence) }
      : { kind: 'untreated', place, untreated: untreated.numbered(sequence) };
  }

  const each = (column: 'medicine' | 'by') =>
    db
      .prepare<[], string>(
        `WITH RECURSIVE each (value) AS (
           SELECT min(${column}) FROM book_lines
           UNION ALL
           SELECT (SELECT min(${column}) FROM book_lines WHERE ${column} > each.value) FROM each WHERE value IS NOT NULL
         ) SELECT value FROM each WHERE value IS NOT NULL`,
      )
      .pluck();
  const [medicines, people] = [each('medicine'), each('by')];

  return {
    /** Every medicine and every person that stands in the book. */
    choices: () => ({ medicines: medicines.all(), people: people.all() }),
    /** The newest lines before a place (`null`: of all), newest first, at most so many. */
    page(filter: BookFilter, before: BookPlace | null, most: number): BookLine[] {
      return linesOf(filter, before, false, most).map(read);
    },
    /** The oldest lines after a place (`null`: of all), oldest first, at most so many. */
    pageAfter(filter: BookFilter, after: BookPlace | null, most: number): BookLine[] {
      return linesOf(filter, after, true, most).map(read);
    },
  };
}
