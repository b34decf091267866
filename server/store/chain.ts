import { createHash } from 'node:crypto';
import type { Db } from './open-store.ts';

/** The records of the day book that are chained, each kind by its table. */
export type Chained = 'treatment' | 'correction' | 'untreated' | 'clock';

/** The order is that of the hash: a column added to a table later is not covered by links that exist. */
const RECORDS: Readonly<Record<Chained, { readonly table: string; readonly columns: string }>> = {
  treatment: {
    table: 'treatments',
    columns: `sequence, id, offer_id, animal_id, jug_id, medicine_id, given_at_ms, given_by, weight_g, volume_ml,
              strength_mg_per_ml, outcome, record`,
  },
  correction: {
    table: 'corrections',
    columns: `sequence, id, treatment_id, kind, animal_id, volume_ml, meat_hours, meat_days, milk_hours, milk_days,
              at_ms, by`,
  },
  untreated: {
    table: 'untreated',
    columns: 'sequence, id, kind, animal_id, offer_id, reason, weight_g, at_ms, by, clock_trusted',
  },
  clock: {
    table: 'clock_corrections',
    columns: `sequence, id, board_start, board_since_ms, was_ms, is_ms, told, by, time_zone, treatments_before,
              jugs_before`,
  },
};
const KINDS = Object.keys(RECORDS) as Chained[];

/** What the first link is made from in place of a link before it. */
const BEGINNING = Buffer.alloc(32);

/** One link a record of the day book, in the order they were written: the SHA-256 of the link before and the record. */
export const CHAIN_SCHEMA = `
  CREATE TABLE chain (
    link INTEGER PRIMARY KEY AUTOINCREMENT,
    kind TEXT NOT NULL CHECK (kind IN ('treatment', 'correction', 'untreated')),
    sequence INTEGER NOT NULL,
    hash BLOB NOT NULL CHECK (length(hash) = 32),
    UNIQUE (kind, sequence)
  ) STRICT;

  CREATE TRIGGER chain_is_never_edited BEFORE UPDATE ON chain
  BEGIN SELECT RAISE(ABORT, 'a link of the chain is never edited'); END;
  CREATE TRIGGER chain_is_never_deleted BEFORE DELETE ON chain
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the chain'); END;
`;

/** Lets what was told of the clock be linked too. The links stand as they were, and how many there ever were. */
export const CHAIN_OF_CLOCK_SCHEMA = `
  CREATE TABLE chain_with_clock (
    link INTEGER PRIMARY KEY AUTOINCREMENT,
    kind TEXT NOT NULL CHECK (kind IN ('treatment', 'correction', 'untreated', 'clock')),
    sequence INTEGER NOT NULL,
    hash BLOB NOT NULL CHECK (length(hash) = 32),
    UNIQUE (kind, sequence)
  ) STRICT;
  INSERT INTO chain_with_clock SELECT link, kind, sequence, hash FROM chain ORDER BY link;
  DELETE FROM sqlite_sequence WHERE name = 'chain_with_clock';
  INSERT INTO sqlite_sequence (name, seq) SELECT 'chain_with_clock', seq FROM sqlite_sequence WHERE name = 'chain';
  DROP TABLE chain;
  ALTER TABLE chain_with_clock RENAME TO chain;

  CREATE TRIGGER chain_is_never_edited BEFORE UPDATE ON chain
  BEGIN SELECT RAISE(ABORT, 'a link of the chain is never edited'); END;
  CREATE TRIGGER chain_is_never_deleted BEFORE DELETE ON chain
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the chain'); END;
`;

/** The records there were when the chain began. */
const FIRST_KINDS: readonly Chained[] = ['treatment', 'correction', 'untreated'];

/** Links the records of a database that was written before it had a chain. */
export function chainRecords(db: Db): void {
  const chain = createChain(db, FIRST_KINDS);
  for (const kind of FIRST_KINDS) {
    // Read as a whole: a statement that is being stepped through would keep the links from being written.
    const numbers = db.prepare(`SELECT sequence FROM ${RECORDS[kind].table} ORDER BY sequence`).pluck();
    for (const sequence of numbers.all() as number[]) chain.add(kind, sequence);
  }
}

/** Links records as they are written; belongs in the same transaction. `kinds` are those that there are tables of. */
export function createChain(db: Db, kinds: readonly Chained[] = KINDS) {
  const reader = createReader(db, kinds);
  const last = db.prepare<[], Buffer>('SELECT hash FROM chain ORDER BY link DESC LIMIT 1').pluck();
  const insert = db.prepare('INSERT INTO chain (kind, sequence, hash) VALUES (?, ?, ?)');
  return {
    /** Links the record of a kind and number that was just written. */
    add(kind: Chained, sequence: number): void {
      const record = reader(kind, sequence);
      if (record === undefined) throw new Error(`there is no ${kind} ${sequence} to link`);
      insert.run(kind, sequence, hashOf(last.get() ?? BEGINNING, kind, record));
    },
  };
}

/** One thing that the chain says was done to the day book past the kiosk. */
export interface ChainTrouble {
  /**
   * `edited`: the record is not what was linked. `gone`: a linked record is missing. `not-linked`: a record was put in.
   * `link-gone`: links are missing before this one. `end-gone`: the newest records are missing with their links.
   */
  readonly what: 'edited' | 'gone' | 'not-linked' | 'link-gone' | 'end-gone';
  readonly kind: Chained | 'link';
  /** The number of the record or link. */
  readonly sequence: number;
}

/** What the chain says of a day book. */
export interface ChainReport {
  readonly links: number;
  /** The newest link in hexadecimal, or `null` where nothing is linked: on paper, it vouches for all before it. */
  readonly head: string | null;
  readonly troubles: readonly ChainTrouble[];
}

/** Reads the whole day book against its chain and tells where they part. Changes nothing. */
export function verifyChain(db: Db): ChainReport {
  const reader = createReader(db, KINDS);
  const troubles: ChainTrouble[] = [];
  let [links, before, head] = [0, 0, BEGINNING as Buffer];
  const rows = db.prepare('SELECT link, kind, sequence, hash FROM chain ORDER BY link');
  for (const raw of rows.iterate()) {
    const { link, kind, sequence, hash } = raw as {
      link: number;
      kind: Chained;
      sequence: number;
      hash: Buffer;
    };
    const record = reader(kind, sequence);
    // Behind a gap the link before is not known: what the record should hash to cannot be told.
    if (link !== before + 1) troubles.push({ what: 'link-gone', kind: 'link', sequence: link });
    else if (record !== undefined && !hashOf(head, kind, record).equals(hash))
      troubles.push({ what: 'edited', kind, sequence });
    if (record === undefined) troubles.push({ what: 'gone', kind, sequence });
    [links, before, head] = [links + 1, link, hash];
  }
  const lastLink = lastEver(db, 'chain');
  if (lastLink > before) troubles.push({ what: 'end-gone', kind: 'link', sequence: lastLink });
  for (const kind of KINDS) {
    const { table } = RECORDS[kind];
    const loose = db
      .prepare<[Chained], number>(
        `SELECT sequence FROM ${table} WHERE NOT EXISTS
           (SELECT 1 FROM chain WHERE chain.kind = ? AND chain.sequence = ${table}.sequence) ORDER BY sequence`,
      )
      .pluck();
    for (const sequence of loose.all(kind)) troubles.push({ what: 'not-linked', kind, sequence });
    const newest = db.prepare<[], number | null>(`SELECT max(sequence) FROM ${table}`).pluck().get() ?? 0;
    const last = lastEver(db, table);
    if (last > newest) troubles.push({ what: 'end-gone', kind, sequence: last });
  }
  return { links, head: links === 0 ? null : head.toString('hex'), troubles };
}

/** The highest number a table ever gave out: SQLite keeps it apart from the rows, and a rollback takes it back. */
function lastEver(db: Db, table: string): number {
  const row = db.prepare<[string], number>('SELECT seq FROM sqlite_sequence WHERE name = ?').pluck();
  return row.get(table) ?? 0;
}

function createReader(
  db: Db,
  kinds: readonly Chained[],
): (kind: Chained, sequence: number) => unknown[] | undefined {
  const read = Object.fromEntries(
    kinds.map((kind) => {
      const { table, columns } = RECORDS[kind];
      return [kind, db.prepare(`SELECT ${columns} FROM ${table} WHERE sequence = ?`).raw()];
    }),
  );
  return (kind, sequence) => read[kind]?.get(sequence) as unknown[] | undefined;
}

function hashOf(before: Buffer, kind: Chained, record: readonly unknown[]): Buffer {
  return createHash('sha256')
    .update(before)
    .update(JSON.stringify([kind, ...record]))
    .digest();
}
