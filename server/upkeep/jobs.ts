import { rmSync } from 'node:fs';
import { diskTroubleOf } from '../barn/disk.ts';
import { reachDisk } from '../reach-disk.ts';
import type { Db } from '../store/open-store.ts';
import { Database } from '../store/sqlite.ts';

/** How closely a file is checked: `quick` leaves out whether indexes hold what their tables do. */
export type HowClosely = 'quick' | 'whole';

/** What the upkeep has done beside the kiosk's own work, since each may take minutes on an old card. */
export interface UpkeepJobs {
  /** Checks a database; the sentences of what is wrong with it, none where it is whole. Rejects where it could not be checked. */
  check(file: string, how: HowClosely): Promise<string[]>;
  /** Copies a database, as it stands now, into a file of its own that is on the disk when this resolves. Rejects where it could not. */
  copy(file: string, to: string): Promise<void>;
}

/** Sentences of a check worth showing; a file that is ruined has thousands. */
const MOST_SAID = 20;

/** Checks a database without writing to it. */
export function checkFile(file: string, how: HowClosely): string[] {
  let db: Db | null = null;
  try {
    db = new Database(file, { readonly: true, fileMustExist: true });
    const pragma = how === 'quick' ? 'quick_check' : 'integrity_check';
    const said = (db.pragma(`${pragma}(${MOST_SAID})`) as Record<string, string>[]).flatMap(Object.values);
    return said.length === 1 && said[0] === 'ok' ? [] : said;
  } catch (error) {
    if (error instanceof Error && diskTroubleOf(error) === 'damaged') return [error.message];
    throw error;
  } finally {
    db?.close();
  }
}

/** Copies a database into a file of its own without a log beside it, checks the copy and waits for the disk. */
export async function copyDatabase(file: string, to: string): Promise<void> {
  const source = new Database(file, { readonly: true, fileMustExist: true });
  try {
    // One state of the file throughout: else each record written meanwhile would begin the copy anew.
    source.exec('BEGIN');
    source.prepare('SELECT 1 FROM sqlite_schema').get();
    await source.backup(to);
    const copy = new Database(to);
    try {
      // A stick may be read where nothing can be written beside the file.
      copy.pragma('journal_mode = DELETE');
    } finally {
      copy.close();
    }
    const wrong = checkFile(to, 'quick');
    if (wrong.length > 0) throw new Error(`the copy is not whole: ${wrong[0]}`);
    reachDisk(to);
  } catch (error) {
    rmSync(to, { force: true });
    throw error;
  } finally {
    source.close();
  }
}
