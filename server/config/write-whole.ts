import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeFileSync } from 'node:fs';

/**
 * Puts a text, or bytes, in a file's place: a power cut leaves the old file or the new one, whole. Throws when the disk refuses,
 * with the old file as it was.
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
  } catch (error) {
    rmSync(fresh, { force: true });
    throw error;
  }
}
