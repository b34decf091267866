import { renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { reachDisk } from '../reach-disk.ts';

/**
 * Puts a text, or bytes, in a file's place: a power cut leaves the old file or the new one, whole. Throws when the disk refuses,
 * with the old file as it was, or, where only the name could not be waited for, the new one. `mode` says who may read it.
 */
export function writeWhole(file: string, content: string | Uint8Array, mode = 0o666): void {
  const fresh = `${file}.new`;
  try {
    // Left behind by a power cut it would keep the mode it had.
    rmSync(fresh, { force: true });
    writeFileSync(fresh, content, { mode });
    reachDisk(fresh);
    renameSync(fresh, file);
    // Without the name on the disk a power cut may bring the old file back.
    reachDisk(dirname(file));
  } catch (error) {
    rmSync(fresh, { force: true });
    throw error;
  }
}
