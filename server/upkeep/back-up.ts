import { constants } from 'node:fs';
import { access, copyFile, mkdir, open, readdir, rename, rm, stat, statfs } from 'node:fs/promises';
import { join } from 'node:path';
import { errorCode } from '../error-code.ts';
import type { UpkeepJobs } from './jobs.ts';
import { backupName, backupsToDrop } from './rotation.ts';

/** What a backup is made of. */
export interface BackedUp {
  readonly database: string;
  /** Small files that go along under the name of the backup, by what is put behind it. */
  readonly beside: Readonly<Record<string, string>>;
  /** Photos, which never change once they are there; all backups of a place share them. */
  readonly photos: string;
}

/** Room a copy leaves free, in bytes. */
const MARGIN = 4 * 1024 * 1024;
const PHOTOS = 'photos';

/**
 * Makes a backup in a folder that is there: beside its name first, checked, on the disk, then under its name; then drops
 * those that need not stay. Answers its path. Rejects, with nothing left behind, where it could not.
 */
export async function backUp(
  folder: string,
  what: BackedUp,
  { wallMs, clockTrusted }: { readonly wallMs: number; readonly clockTrusted: boolean },
  jobs: Pick<UpkeepJobs, 'copy'>,
): Promise<string> {
  await access(folder, constants.W_OK);
  // A copy that was cut off has nobody else to take it away.
  for (const name of await readdir(folder)) if (name.endsWith('.part')) await rm(join(folder, name));
  const { bavail, bsize } = await statfs(folder);
  if (bavail * bsize < (await sizeOf(what.database)) + MARGIN)
    throw Object.assign(new Error('no room for a copy'), { code: 'ENOSPC' });
  const name = backupName(wallMs, clockTrusted);
  const part = join(folder, `.${name}.part`);
  try {
    await jobs.copy(what.database, part);
    for (const [ending, file] of Object.entries(what.beside))
      await copyIfThere(file, join(folder, `${stem(name)}${ending}`));
    await copyMissing(what.photos, join(folder, PHOTOS));
    await rename(part, join(folder, name));
    await reachDisk(folder);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
  // A date nobody trusts says nothing of which copies are the old ones.
  if (clockTrusted) await dropOld(folder, Object.keys(what.beside));
  return join(folder, name);
}

async function dropOld(folder: string, besides: readonly string[]): Promise<void> {
  for (const name of backupsToDrop(await readdir(folder))) {
    for (const ending of besides) await rm(join(folder, `${stem(name)}${ending}`), { force: true });
    await rm(join(folder, name), { force: true });
  }
}

function stem(name: string): string {
  return name.slice(0, -'.sqlite'.length);
}

/** Bytes of a database with the log beside it. */
async function sizeOf(database: string): Promise<number> {
  const log = await stat(`${database}-wal`).catch(() => ({ size: 0 }));
  return (await stat(database)).size + log.size;
}

async function copyIfThere(file: string, to: string): Promise<void> {
  try {
    await copyFile(file, to);
    await reachDisk(to);
  } catch (error) {
    if (errorCode(error) !== 'ENOENT') throw error;
  }
}

async function copyMissing(from: string, to: string): Promise<void> {
  const there = await readdir(from).catch((error: unknown) => {
    if (errorCode(error) === 'ENOENT') return [];
    throw error;
  });
  if (there.length === 0) return;
  await mkdir(to, { recursive: true });
  const known = new Set(await readdir(to));
  for (const name of there) {
    if (known.has(name)) continue;
    // Under its name only once it is whole: what is there is never copied again.
    const part = join(to, `.${name}.part`);
    await copyFile(join(from, name), part);
    await reachDisk(part);
    await rename(part, join(to, name));
  }
}

async function reachDisk(path: string): Promise<void> {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
