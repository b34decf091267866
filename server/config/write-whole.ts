import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Puts a text, or bytes, in a file's place: a power cut leaves the old file or the new one, whole. Throws when the disk refuses,
 * with the old file as it was, or, where only the name could not be waited for, the new one.
 */
export function writeWhole(file: string, content: string | Uint8Array): void {
  const fresh = `${file}.new`;
  try {
    const handle = openSync(fresh, 'w');
    try {
      writeFileSync(handle, content);
      // On the disk before it takes the old one's place.
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(fresh, file);
    syncFolder(dirname(file));
  } catch (error) {
    rmSync(fresh, { force: true });
    throw error;
  }
}

/** Waits until the names in a folder are on the disk: without it a power cut may bring the old file back. */
function syncFolder(folder: string): void {
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
