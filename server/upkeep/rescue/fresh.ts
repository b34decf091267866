import { errorCode } from '../../error-code.ts';
import { MIGRATIONS, migrate } from '../../store/migrations.ts';
import type { Db } from '../../store/open-store.ts';
import { Database } from '../../store/sqlite.ts';
import type { FoundRow } from './pages.ts';
import type { Stored } from './record.ts';

/** A table of the new file, and how rows are put into it. */
export interface FreshTable {
  readonly name: string;
  /** Whether its rows are numbered; others stand in the order of their keys. */
  readonly numbered: boolean;
  readonly columns: number;
  /** Puts a row in; answers whether it fits and is not there yet. */
  put(row: FoundRow): 'put' | 'there' | 'does-not-fit';
}

/** A new file of the version the damaged one had, so that its rows fit as they are. Throws where a file is there already. */
export function freshFile(path: string, version: number): Db {
  const db = new Database(path);
  if (db.prepare('SELECT 1 FROM sqlite_schema LIMIT 1').get() !== undefined) {
    db.close();
    throw new Error(`${path} is there already: name a file that is not`);
  }
  db.pragma('foreign_keys = OFF');
  db.transaction(() => {
    for (const step of MIGRATIONS.slice(0, version)) migrate(db, step);
    db.pragma(`user_version = ${version}`);
  })();
  return db;
}

interface Column {
  readonly name: string;
  readonly type: string;
  readonly pk: number;
  readonly dflt_value: string | null;
}

/** The tables of a new file, but for those that are made anew from the others. */
export function freshTables(db: Db, madeAnew: readonly string[]): FreshTable[] {
  const tables = db
    .prepare<[], { name: string; wr: number }>(
      "SELECT name, wr FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name",
    )
    .all();
  return tables
    .filter(({ name }) => !madeAnew.includes(name))
    .map(({ name, wr }) => freshTable(db, name, wr === 0));
}

function freshTable(db: Db, name: string, numbered: boolean): FreshTable {
  const declared = db.pragma(`table_info(${name})`) as Column[];
  // Without row numbers, a row stands on disk with its key first.
  const columns = numbered
    ? declared
    : [
        ...declared.filter(({ pk }) => pk > 0).sort((a, b) => a.pk - b.pk),
        ...declared.filter(({ pk }) => pk === 0),
      ];
  const alias = columns.findIndex(({ type, pk }) => numbered && pk === 1 && type === 'INTEGER');
  const names = [...(numbered && alias < 0 ? ['rowid'] : []), ...columns.map((column) => column.name)];
  const insert = db.prepare(
    `INSERT INTO ${name} (${names.join(', ')}) VALUES (${names.map(() => '?').join(', ')})`,
  );
  const defaults = columns.map(({ dflt_value }) => (dflt_value === null ? null : literal(dflt_value)));

  return {
    name,
    numbered,
    columns: columns.length,
    put({ rowid, values }) {
      if (values.length > columns.length || (rowid === null) === numbered) return 'does-not-fit';
      // A row from before a column was added ends before it.
      const whole: Stored[] = columns.map((_, i) =>
        i < values.length ? (values[i] as Stored) : (defaults[i] ?? null),
      );
      if (alias >= 0) {
        if (whole[alias] !== null) return 'does-not-fit';
        whole[alias] = rowid;
      }
      try {
        insert.run(...(numbered && alias < 0 ? [rowid, ...whole] : whole));
        return 'put';
      } catch (error) {
        return /CONSTRAINT_(UNIQUE|PRIMARYKEY|ROWID)/.test(errorCode(error)) ? 'there' : 'does-not-fit';
      }
    },
  };
}

function literal(sql: string): Stored {
  return /^'.*'$/.test(sql) ? sql.slice(1, -1).replaceAll("''", "'") : Number(sql);
}
