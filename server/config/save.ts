import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CONFIG_FILE } from './load.ts';
import { writeWhole } from './write-whole.ts';

/**
 * Changes the configuration file in a data folder, or creates it; never leaves half a file behind.
 *
 * What the change does not touch stays as the keeper wrote it. Throws when the file there is not valid JSON, the
 * change itself throws, or the disk refuses.
 */
export function changeConfig(dataFolder: string, change: (config: Record<string, unknown>) => object): void {
  mkdirSync(dataFolder, { recursive: true });
  const file = join(dataFolder, CONFIG_FILE);
  const before = existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>) : {};
  writeWhole(file, `${JSON.stringify(change(before), null, 2)}\n`);
}
