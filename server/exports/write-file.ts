import { constants } from 'node:fs';
import { access, open, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ExportWritten } from '../../shared/exports.ts';
import { diskTroubleOf } from '../barn/disk.ts';

/**
 * Writes a file to a folder whole or not at all: beside its name first, on the disk, then under its name. A folder that is
 * not there is not made, since it is the place where a memory stick would be.
 */
export async function writeWhole(folder: string, name: string, text: Readable): Promise<ExportWritten> {
  const [file, part] = [join(folder, name), join(folder, `.${name}.part`)];
  try {
    await access(folder, constants.W_OK);
  } catch {
    text.destroy();
    return { ok: false, why: 'not-there' };
  }
  try {
    const handle = await open(part, 'w');
    const stream = handle.createWriteStream({ flush: true });
    await pipeline(text, stream);
    await rename(part, file);
    return { ok: true, file, bytes: stream.bytesWritten };
  } catch (error) {
    await rm(part, { force: true });
    return { ok: false, why: diskTroubleOf(error) === 'full' ? 'full' : 'not-written' };
  }
}
