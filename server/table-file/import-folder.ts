import { mkdirSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** A file a keeper put into the import folder. */
export interface ImportFile {
  readonly name: string;
  readonly bytes: number;
}

/** The tables in the import folder, by name; the folder is made where it is missing. None where it cannot be read. */
export function filesIn(
  folder: string | null,
  log: (message: string, error: unknown) => void,
): readonly ImportFile[] {
  if (folder === null) return [];
  try {
    mkdirSync(folder, { recursive: true });
    return readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isFile() && /\.(csv|txt)$/i.test(entry.name))
      .map(({ name }) => ({ name, bytes: statSync(join(folder, name)).size }))
      .sort((a, b) => a.name.localeCompare(b.name));
  } catch (error) {
    log('the import folder could not be read', error);
    return [];
  }
}
