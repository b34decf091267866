import { accessSync, constants, statfsSync } from 'node:fs';
import { errorCode } from '../error-code.ts';

/**
 * Why nothing can be relied on to be kept: `full` or nearly so, `read-only`, `failing` to take what is written, or the
 * file is `damaged`, which does not pass by itself.
 */
export type DiskTrouble = 'full' | 'read-only' | 'failing' | 'damaged';

/** The disk as the barn knows it. */
export interface Disk {
  /** What is wrong now, or `null`. */
  trouble(): DiskTrouble | null;
  /** Hears of an error of a write; answers whether the disk is to blame. */
  failed(error: unknown): boolean;
  /** Hears that the file was found damaged. */
  foundDamaged(): void;
  /** Looks whether it keeps what is written: call it often, it paces itself. */
  look(uptimeMs: number): void;
}

/** What a disk is watched through. */
export interface DiskWatch {
  /** The folder the database stands in. */
  readonly folder: string;
  /** Writes something small to the database. Throws where that fails. */
  readonly probe: () => void;
  /** Room below which nothing more is begun, in bytes. */
  readonly leastFree?: number;
  readonly log: (message: string, error: unknown) => void;
}

/** Room for some thousand treatments, and for SQLite to move its log into the file. */
const LEAST_FREE = 16 * 1024 * 1024;
/** How often the disk is looked at. */
const LOOK_EVERY_MS = 5000;

/** Tells from an error of SQLite or Node what is wrong with the disk; `null` where the error is of another kind. */
export function diskTroubleOf(error: unknown): DiskTrouble | null {
  const code = errorCode(error);
  if (/^(SQLITE_FULL|ENOSPC|EDQUOT|EFBIG)/.test(code)) return 'full';
  if (/^(SQLITE_READONLY|EROFS|EACCES|EPERM)/.test(code)) return 'read-only';
  if (/^(SQLITE_CORRUPT|SQLITE_NOTADB)/.test(code)) return 'damaged';
  return /^(SQLITE_IOERR|SQLITE_CANTOPEN|EIO|ENXIO|ENODEV)/.test(code) ? 'failing' : null;
}

/** Watches the disk under a database. */
export function watchDisk({ folder, probe, leastFree = LEAST_FREE, log }: DiskWatch): Disk {
  let trouble: DiskTrouble | null = null;
  let lookedAt = Number.NEGATIVE_INFINITY;

  function is(found: DiskTrouble | null, error: unknown): void {
    if (trouble === 'damaged' || trouble === found) return;
    trouble = found;
    log(found === null ? 'the disk keeps records again' : `the disk is ${found}`, error);
  }

  return {
    trouble: () => trouble,
    failed(error) {
      const found = diskTroubleOf(error);
      if (found !== null) is(found, error);
      return found !== null;
    },
    foundDamaged: () => is('damaged', null),
    look(uptimeMs) {
      if (uptimeMs - lookedAt < LOOK_EVERY_MS) return;
      lookedAt = uptimeMs;
      try {
        // Even root is told here of a disk that was mounted read-only.
        accessSync(folder, constants.W_OK);
        const { bavail, bsize } = statfsSync(folder);
        if (bavail * bsize < leastFree) return is('full', null);
        // A write that failed leaves no trace in the figures: only one that succeeds says that all is well.
        if (trouble !== null && trouble !== 'damaged') probe();
        is(null, null);
      } catch (error) {
        is(diskTroubleOf(error) ?? 'failing', error);
      }
    },
  };
}

/** The disk of a kiosk that keeps nothing: it is never in the way. */
export const NO_DISK: Disk = {
  trouble: () => null,
  failed: () => false,
  foundDamaged: () => {},
  look: () => {},
};
