import { accessSync, constants } from 'node:fs';
import { delimiter, resolve } from 'node:path';

/** Whether a program can be started from here: by its path, or by a name found along `PATH` as a shell finds it. */
export function programFound(program: string): boolean {
  if (program.includes('/')) return executable(program);
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  return folders.some((folder) => executable(resolve(folder, program)));
}

function executable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
