import { renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { reachDisk } from '../reach-disk.ts';

/**
 * Puts a text, or bytes, in a file's place: a power cut leaves the old file or the new one, whole. Throws when the disk refuses,
 * with the old file as it was, or, where only the name could not be waited for, the new one.
 */
export function writeWhole(file: string, content: string | Uint8Array): void {
  const fresh = `${file}.new`;
  try {
    writeFileSync(fresh, content);
    reachDisk(fresh);
    renameSync(fresh, file);
    // Without the name on the disk a power cut may bring the old file back.
    reachDisk(dirname(file));
  } catch (error) {
    rmSync(fresh, { force: true });
    throw error;
  }
}
