import { accessSync, constants } from 'node:fs';
import { delimiter, resolve } from 'node:path';

/** Whether a program can be started from here: by its path, or by a name found along `PATH` as a shell finds it. */
export function programFound(program: string, path = process.env['PATH'] ?? ''): boolean {
  const places = program.includes('/') ? [program] : path.split(delimiter).map((at) => resolve(at, program));
  return places.some(executable);
}

function executable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
