import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fingerprint, isFresh, ROOT, writeStamp } from './stamp.mjs';

const SOURCE = 'hardware/ear/listener.c';
const STAMP = 'dist/ear/.built';

/** The program that hears, compiled for this machine. */
export const LISTENER = join(ROOT, 'dist/ear/listener');

/**
 * Compiles the program around the speech engine when its source has changed since the last time.
 *
 * Answers whether the kiosk can hear; says why where it cannot, and leaves the rest of the kiosk as it is.
 */
export function ensureEar() {
  const print = fingerprint({ files: [SOURCE] });
  if (isFresh(STAMP, print)) return true;
  const where = spawnSync('pkg-config', ['--cflags', '--libs', 'pocketsphinx', 'sphinxbase'], {
    encoding: 'utf8',
  });
  if (where.status !== 0) {
    console.log('The kiosk hears nothing: libpocketsphinx-dev is not installed.');
    return false;
  }
  mkdirSync(dirname(LISTENER), { recursive: true });
  const flags = where.stdout.trim().split(/\s+/);
  const compiled = spawnSync('cc', ['-O2', '-o', LISTENER, join(ROOT, SOURCE), ...flags], {
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  if (compiled.status !== 0) {
    console.log(`The kiosk hears nothing: ${SOURCE} could not be compiled.`);
    return false;
  }
  writeStamp(STAMP, print);
  return true;
}
