import { closeSync, fsyncSync, openSync } from 'node:fs';

/** Waits until a file, or the names in a folder, are on the disk: a power cut then takes nothing back. Throws when the disk refuses. */
export function reachDisk(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
