import type { ClockCorrection, Told } from '../../core/clock/correction.ts';
import type { Db } from './open-store.ts';

/** The records that a correction of the clock dates anew. */
export type DatedKind = 'treatment' | 'jug';

interface Row {
  readonly id: string;
  readonly board_start: string;
  readonly board_since_ms: number;
  readonly was_ms: number | null;
  readonly is_ms: number;
  readonly told: ClockCorrection['told'];
  readonly by: string;
  readonly time_zone: string;
  readonly treatments_before: number;
  readonly jugs_before: number;
}

/** What bears on one record, with the zone its days are counted in. */
export type ToldOfRecord = Told & { readonly ofStart: ClockCorrection | null };

/** What was told of the clock, and what of it bears on a record. */
export function createClockCorrections(db: Db) {
  const newest = db.prepare<[], number | null>('SELECT max(sequence) FROM clock_corrections').pluck();
  // A later word on the same start of the board takes the place of an earlier one.
  const lastWords = db.prepare<[], Row>(
    `SELECT * FROM clock_corrections AS word WHERE NOT EXISTS
       (SELECT 1 FROM clock_corrections AS later
        WHERE later.board_start = word.board_start AND later.sequence > word.sequence)
     ORDER BY sequence`,
  );
  const insert = db.prepare(
    `INSERT INTO clock_corrections (id, board_start, board_since_ms, was_ms, is_ms, told, by, time_zone,
                                    treatments_before, jugs_before)
     VALUES (@id, @start, @sinceMs, @wasMs, @isMs, @told, @by, @timeZone,
             (SELECT coalesce(max(sequence), 0) FROM treatments), (SELECT coalesce(max(number), 0) FROM jugs))`,
  );
  let read: { readonly newest: number | null; readonly words: LastWords } | null = null;

  /** Read once a correction: ten years of records ask for them one by one. A change that was rolled back is noticed. */
  function words(): LastWords {
    const newestNow = newest.get() ?? null;
    if (read === null || read.newest !== newestNow)
      read = { newest: newestNow, words: lastWordsOf(lastWords.all()) };
    return read.words;
  }

  return {
    /** Writes a word on the clock; answers its number. */
    add({ board, ...correction }: ClockCorrection): number {
      const { lastInsertRowid } = insert.run({ ...correction, start: board.start, sinceMs: board.sinceMs });
      read = null;
      return Number(lastInsertRowid);
    },
    /** The last word on a start of the board; `null` where there is none. */
    ofStart: (start: string): ClockCorrection | null => words().byStart.get(start) ?? null,
    /** What bears on the record of a kind and number that was written in a start of the board. */
    toldOf(kind: DatedKind, number: number, start: string | null): ToldOfRecord {
      const { byStart, earliest } = words();
      const ofStart = start === null ? null : (byStart.get(start) ?? null);
      const wasBeforeMs = firstAfter(earliest[kind], number)?.isMs ?? null;
      return { ofStart, wasBeforeMs };
    },
  };
}

/** What was told of the clock on disk. */
export type ClockCorrections = ReturnType<typeof createClockCorrections>;

interface LastWords {
  readonly byStart: ReadonlyMap<string, ClockCorrection>;
  /** For records up to a number, the earliest time that was told after them; ascending in both. */
  readonly earliest: Readonly<Record<DatedKind, readonly Word[]>>;
}

/** A time that was told, and the newest number there was before. */
interface Word {
  readonly before: number;
  readonly isMs: number;
}

function lastWordsOf(rows: readonly Row[]): LastWords {
  return {
    byStart: new Map(rows.map((row) => [row.board_start, toCorrection(row)])),
    earliest: {
      treatment: earliestOf(rows.map((row) => ({ before: row.treatments_before, isMs: row.is_ms }))),
      jug: earliestOf(rows.map((row) => ({ before: row.jugs_before, isMs: row.is_ms }))),
    },
  };
}

/** Only a word that is earlier than all words after it says more of the records before it than they do. */
function earliestOf(words: readonly Word[]): Word[] {
  const found: Word[] = [];
  for (const word of words.toReversed())
    if (word.isMs < (found.at(-1)?.isMs ?? Number.POSITIVE_INFINITY)) found.push(word);
  return found.reverse();
}

/** The first word told after the record of a number, by halving: there may be one for each start of ten years. */
function firstAfter(words: readonly Word[], number: number): Word | undefined {
  let [from, to] = [0, words.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((words[middle]?.before ?? 0) >= number) to = middle;
    else from = middle + 1;
  }
  return words[from];
}

function toCorrection(row: Row): ClockCorrection {
  return {
    id: row.id,
    board: { start: row.board_start, sinceMs: row.board_since_ms },
    wasMs: row.was_ms,
    isMs: row.is_ms,
    told: row.told,
    by: row.by,
    timeZone: row.time_zone,
  };
}
