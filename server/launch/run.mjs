import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureBuilt } from './build.mjs';
import { ROOT } from './stamp.mjs';

// Runs one built program by its path below dist/: `node server/launch/run.mjs hardware/simulator/main.js`.
await ensureBuilt();
await import(pathToFileURL(join(ROOT, 'dist', process.argv[2] ?? '')).href);
