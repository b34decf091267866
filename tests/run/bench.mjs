import { join } from 'node:path';
import { ensureBuilt } from '../../server/launch/build.mjs';
import { ensureEar } from '../../server/launch/ear.mjs';
import { ensureInstalled } from '../../server/launch/install.mjs';
import { ensurePackages, NEEDS } from '../../server/launch/packages.mjs';
import { ROOT } from '../../server/launch/stamp.mjs';

// `npm run bench [-- table …]`: measures, and prints one table a subject, ratios first.
ensureInstalled();
ensurePackages([...NEEDS.voices, ...NEEDS.ear]);
ensureEar();
await ensureBuilt();
const { runnerImport } = await import('vite');
const { module } = await runnerImport(join(ROOT, 'tests/bench/main.ts'), {
  root: ROOT,
  configFile: false,
  logLevel: 'error',
});
await module.main(process.argv.slice(2));
