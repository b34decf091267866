import type BetterSqlite from 'better-sqlite3';
import { tellOfRecords } from './events.ts';
import { MIGRATIONS, migrate } from './migrations.ts';
import { keepNumbersApart } from './numbers-apart.ts';
import { Database } from './sqlite.ts';

/** Size of a page of a new file: a commit writes whole pages, and a short note touches ten of them. */
export const PAGE_BYTES = 1024;
/** How long the log grows before it is moved into the file: a page that is written often goes there once. */
const LOG_PAGES = 10_000;

/** An open database. */
export type Db = BetterSqlite.Database;

/**
 * Opens or creates the database file and brings its schema up to date, all or nothing.
 *
 * Commits reach the disk before they return (`synchronous = FULL`). Throws when the file is newer than this program
 * or is no database.
 */
export function openStore(path: string): Db {
  const db = new Database(path);
  try {
    return upToDate(db);
  } catch (error) {
    closeUntouched(db);
    throw error;
  }
}

/** Closes a connection so that what its log holds stays in the log, and the file as it was found. */
export function closeUntouched(db: Db): void {
  // The last connection of a file moves the log into it; one that may not write cannot, and so leaves it.
  let last: Db | null = null;
  try {
    last = new Database(db.name, { readonly: true, fileMustExist: true });
    last.prepare('SELECT 1 FROM sqlite_schema').get();
  } catch {
    // A file that nothing can be read from is one that nothing is moved into.
  }
  db.close();
  last?.close();
}

function upToDate(db: Db): Db {
  // Without effect on a file that has pages already.
  db.pragma(`page_size = ${PAGE_BYTES}`);
  db.pragma(`wal_autocheckpoint = ${LOG_PAGES}`);
  db.pragma('journal_mode = WAL');
  // Set at every open: in WAL mode the default is NORMAL, which may lose the last commits in a power cut.
  db.pragma('synchronous = FULL');
  const from = db.pragma('user_version', { simple: true }) as number;
  if (from > MIGRATIONS.length) {
    throw new Error(
      `the database is at version ${from}, this program knows ${MIGRATIONS.length}: update the program`,
    );
  }
  // A file that is up to date is not written to: it may be one that must stay as it is found.
  if (from < MIGRATIONS.length) bringUpToDate(db, from);
  db.pragma('foreign_keys = ON');
  tellOfRecords(db);
  keepNumbersApart(db);
  return db;
}

function bringUpToDate(db: Db, from: number): void {
  // A table is made anew by dropping it; what points to it must be let wait until the new one stands.
  db.pragma('foreign_keys = OFF');
  db.transaction(() => {
    for (const step of MIGRATIONS.slice(from)) migrate(db, step);
    if ((db.pragma('foreign_key_check') as unknown[]).length > 0)
      throw new Error('the database has rows that point to nothing: restore a copy of the file');
    db.pragma(`user_version = ${MIGRATIONS.length}`);
  }).immediate();
}
