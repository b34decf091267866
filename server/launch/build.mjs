import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureInstalled } from './install.mjs';
import { run } from './shell.mjs';
import { fingerprint, isFresh, ROOT, writeStamp } from './stamp.mjs';

const ROOMS = ['core', 'shared', 'hardware', 'server', 'kiosk'];
const STAMP = 'dist/.byreside-built';

/** Builds server and kiosk into `dist/` when their sources have changed since the last time; else does nothing. */
export function ensureBuilt() {
  ensureInstalled();
  const print = fingerprint({ files: ['package-lock.json', 'tsconfig.json'], folders: ROOMS });
  if (isFresh(STAMP, print)) return;
  console.log('Building …');
  // The compiled ear stands there too, and is no part of this.
  for (const room of ROOMS) rmSync(join(ROOT, 'dist', room), { recursive: true, force: true });
  run('node_modules/.bin/tsc', ['-p', '.']);
  run('node_modules/.bin/vite', ['build', '--config', 'kiosk/vite.config.ts', '--logLevel', 'warn']);
  writeStamp(STAMP, print);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) ensureBuilt();
