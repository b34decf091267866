import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder the project stands in. */
export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Every file below the paths named, sorted, so that the same tree always hashes the same. */
function filesBelow(paths) {
  return paths.flatMap((path) => {
    const full = join(ROOT, path);
    if (!existsSync(full)) return [];
    return readdirSync(full, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name));
  });
}

/** A hash over the contents of files and whole folders, relative to the project. */
export function fingerprint({ files = [], folders = [] }) {
  const hash = createHash('sha256');
  const all = [...files.map((file) => join(ROOT, file)), ...filesBelow(folders)].sort();
  for (const file of all) {
    hash.update(file.slice(ROOT.length));
    hash.update(readFileSync(file));
  }
  return hash.digest('hex');
}

/** Whether the stamp file holds this fingerprint. */
export function isFresh(stampFile, print) {
  const full = join(ROOT, stampFile);
  return existsSync(full) && readFileSync(full, 'utf8') === print;
}

/** Writes the fingerprint once the work it stands for is done. */
export function writeStamp(stampFile, print) {
  const full = join(ROOT, stampFile);
  mkdirSync(dirname(full), { recursive: true });
  writeFileSync(full, print);
}
