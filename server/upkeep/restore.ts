import { copyFileSync, existsSync, linkSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { readEnvironment } from '../config/environment.ts';
import { CONFIG_FILE, REAL_DATABASE } from '../config/load.ts';
import { errorCode } from '../error-code.ts';
import { MEDICINES_FILE } from '../formulary/own-medicines.ts';
import { reachDisk } from '../reach-disk.ts';
import { endLife } from '../store/events.ts';
import { MIGRATIONS } from '../store/migrations.ts';
import type { Db } from '../store/open-store.ts';
import { Database } from '../store/sqlite.ts';
import { checkFile } from './jobs.ts';
import { stampOf } from './rotation.ts';

/** What was restored, or why nothing was touched. */
export type Restored =
  | {
      readonly ok: true;
      /** Where what was there before lies now; `null` where there was nothing. */
      readonly kept: string | null;
      /** Treatments in what was restored, and in what was there before where that can be read. */
      readonly treatments: { readonly now: number; readonly before: number | null };
      /** Small files that came back too, since there were none. */
      readonly beside: readonly string[];
    }
  | { readonly ok: false; readonly why: string };

/**
 * Puts a backup in the place of a data folder's database.
 *
 * The backup is checked first; nothing is touched while the kiosk runs or where the backup is not whole. What was there
 * stays, with its log, in a folder named by `stamp`. A power cut in between leaves the old file or the new one; run it
 * again then. `kiosk.json` and `medicines.json` come back only where there are none.
 */
export function restore(backup: string, dataFolder: string, stamp: string): Restored {
  const target = join(dataFolder, REAL_DATABASE);
  const why = existsSync(backup) ? whyNotUsable(backup) : `there is no file ${backup}`;
  if (why !== null) return { ok: false, why };
  if (isOpenElsewhere(target))
    return { ok: false, why: 'the kiosk is running on these records: stop it first' };
  mkdirSync(dataFolder, { recursive: true });
  const fresh = `${target}.restoring`;
  rmSync(fresh, { force: true });
  copyFileSync(backup, fresh);
  beginsAnew(fresh);
  reachDisk(fresh);
  const before = treatmentsIn(target);
  const kept = keepAside(target, join(dataFolder, `before-restore-${stamp}`));
  renameSync(fresh, target);
  reachDisk(dataFolder);
  const now = treatmentsIn(target) ?? 0;
  return { ok: true, kept, treatments: { now, before }, beside: restoreBeside(backup, dataFolder) };
}

/** What was told after the copy was made may be known elsewhere: numbers given out then are not given out again. */
function beginsAnew(file: string): void {
  const db = new Database(file, { fileMustExist: true });
  try {
    endLife(db);
  } finally {
    db.close();
  }
}

function whyNotUsable(backup: string): string | null {
  try {
    const [wrong] = checkFile(backup, 'whole');
    if (wrong !== undefined) return `the copy is damaged (${wrong}): choose another`;
    const db = new Database(backup, { readonly: true, fileMustExist: true });
    try {
      const version = db.pragma('user_version', { simple: true }) as number;
      if (db.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'treatments'").get() === undefined)
        return 'it holds no records of this kiosk';
      return version > MIGRATIONS.length ? 'it was written by a later program: update the program' : null;
    } finally {
      db.close();
    }
  } catch (error) {
    return `it cannot be read: ${error instanceof Error ? error.message : error}`;
  }
}

/** Whether another process has the database open: only one alone can have it to itself. */
function isOpenElsewhere(file: string): boolean {
  if (!existsSync(file)) return false;
  let db: Db | null = null;
  try {
    db = new Database(file, { fileMustExist: true, timeout: 500 });
    db.pragma('locking_mode = EXCLUSIVE');
    db.exec('BEGIN EXCLUSIVE; ROLLBACK');
    return false;
  } catch (error) {
    // A file that is damaged may still be open elsewhere, but no kiosk writes to it.
    return errorCode(error).startsWith('SQLITE_BUSY');
  } finally {
    db?.close();
  }
}

function treatmentsIn(file: string): number | null {
  try {
    const db = new Database(file, { readonly: true, fileMustExist: true });
    try {
      return db.prepare<[], number>('SELECT count(*) FROM treatments').pluck().get() ?? 0;
    } finally {
      db.close();
    }
  } catch {
    return null;
  }
}

/** Puts a database and its log aside. The file itself stays in its place until another takes it. */
function keepAside(target: string, folder: string): string | null {
  if (!existsSync(target)) return null;
  mkdirSync(folder, { recursive: true });
  linkSync(target, join(folder, REAL_DATABASE));
  // A log that outlived its file would be read into the new one.
  for (const ending of ['-wal', '-shm'])
    if (existsSync(`${target}${ending}`))
      renameSync(`${target}${ending}`, join(folder, `${REAL_DATABASE}${ending}`));
  reachDisk(folder);
  return folder;
}

function restoreBeside(backup: string, dataFolder: string): string[] {
  const stem = backup.replace(/\.sqlite$/, '');
  return [CONFIG_FILE, MEDICINES_FILE].filter((name) => {
    const from = `${stem}.${name}`;
    const to = join(dataFolder, name);
    if (!existsSync(from) || existsSync(to)) return false;
    copyFileSync(from, to);
    reachDisk(to);
    return true;
  });
}

/** `npm run restore -- FILE`: into the data folder. Answers the exit code. */
export function runRestore(backup: string | undefined): number {
  if (backup === undefined) {
    console.error(
      'Name the copy to restore: npm run restore -- /media/stick/byreside-backups/byreside-….sqlite',
    );
    return 2;
  }
  const { dataFolder } = readEnvironment(process.env, process.cwd());
  const restored = restore(backup, dataFolder, stampOf(Date.now()));
  if (!restored.ok) {
    console.error(`Nothing was restored: ${restored.why}.`);
    return 1;
  }
  const { treatments, kept, beside } = restored;
  console.log(`Restored: ${treatments.now} treatments (before: ${treatments.before ?? 'not readable'}).`);
  if (beside.length > 0) console.log(`Restored too, since there were none: ${beside.join(', ')}.`);
  if (kept !== null) console.log(`What was there before lies in ${kept}.`);
  console.log(
    `Photos lie in ${join(dirname(backup), 'photos')}; copy them into ${join(dataFolder, 'photos')}.`,
  );
  return 0;
}
