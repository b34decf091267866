import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { CONFIG_FILE } from './load.ts';

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
  const text = `${JSON.stringify(change(before), null, 2)}\n`;
  const fresh = `${file}.new`;
  const handle = openSync(fresh, 'w');
  writeSync(handle, text);
  // On the disk before it takes the old one's place: a power cut leaves one or the other, whole.
  fsyncSync(handle);
  closeSync(handle);
  renameSync(fresh, file);
}
