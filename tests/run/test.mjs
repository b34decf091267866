import { spawnSync } from 'node:child_process';
import { ensureBuilt } from '../../server/launch/build.mjs';
import { ensureEar } from '../../server/launch/ear.mjs';
import { ensurePackages, NEEDS } from '../../server/launch/packages.mjs';
import { ROOT } from '../../server/launch/stamp.mjs';

// `npm test`: installs what is missing, builds what is stale, runs every test, ends with "N passed, N failed".
ensurePackages([...NEEDS.test, ...NEEDS.voices, ...NEEDS.ear]);
await ensureBuilt();
ensureEar();
const result = spawnSync(
  'node_modules/.bin/vitest',
  ['run', '--config', 'tests/vitest.config.ts', ...process.argv.slice(2)],
  { cwd: ROOT, stdio: 'inherit' },
);
process.exit(result.status ?? 1);
