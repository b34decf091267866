import { ensurePackages, NEEDS } from './packages.mjs';
import { run } from './shell.mjs';
import { fingerprint, isFresh, writeStamp } from './stamp.mjs';

const STAMP = 'node_modules/.byreside-installed';

/** Installs the npm packages when the lockfile has changed since the last time; else does nothing. */
export function ensureInstalled() {
  const print = fingerprint({ files: ['package-lock.json'] });
  if (isFresh(STAMP, print)) return;
  ensurePackages(NEEDS.build);
  console.log(
    'Installing npm packages; the database module is compiled, which takes a few minutes on a small board …',
  );
  run('npm', ['ci', '--include=dev', '--no-audit', '--no-fund']);
  writeStamp(STAMP, print);
}
