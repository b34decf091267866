import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureInstalled } from './install.mjs';
import { run } from './shell.mjs';
import { fingerprint, isFresh, ROOT, writeStamp } from './stamp.mjs';

const ROOMS = ['core', 'shared', 'hardware', 'server', 'kiosk'];
/** What Node is given to run, by its path below a room and below `dist/`. */
const PROGRAMS = [
  'server/main',
  'server/hub/main',
  'server/upkeep/worker',
  'server/upkeep/verify-main',
  'server/upkeep/restore-main',
  'server/upkeep/rescue-main',
  'hardware/simulator/main',
];
/** They hold compiled parts, which Node finds only where npm put them. */
const NATIVE = ['better-sqlite3', 'better-sqlite3-node20', '@serialport/bindings-cpp'];
const STAMP = 'dist/.byreside-built';

/** Builds server and kiosk into `dist/` when their sources have changed since the last time; else does nothing. */
export async function ensureBuilt() {
  ensureInstalled();
  const print = fingerprint({ files: ['package-lock.json', 'tsconfig.json'], folders: ROOMS });
  if (isFresh(STAMP, print)) return;
  console.log('Building …');
  // The compiled ear stands there too, and is no part of this.
  for (const room of ROOMS) rmSync(join(ROOT, 'dist', room), { recursive: true, force: true });
  await buildPrograms();
  run('node_modules/.bin/vite', ['build', '--config', 'kiosk/vite.config.ts', '--logLevel', 'warn']);
  writeStamp(STAMP, print);
}

/** One file where there were seven hundred: a board reads them from a slow card at every start. */
async function buildPrograms() {
  const { rolldown } = await import('rolldown');
  const built = await rolldown({
    input: Object.fromEntries(PROGRAMS.map((name) => [name, join(ROOT, `${name}.ts`)])),
    external: NATIVE,
    platform: 'node',
  });
  // What the programs share lies beside the kiosk's own, so that a path from there is right wherever its code ends up.
  await built.write({
    dir: join(ROOT, 'dist'),
    entryFileNames: '[name].js',
    chunkFileNames: 'server/[name]-[hash].js',
    sourcemap: true,
    // A start reads all of it; whose each part is must stay.
    comments: { legal: true, annotation: false, jsdoc: false },
  });
  await built.close();
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await ensureBuilt();
