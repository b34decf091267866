import { join } from 'node:path';
import { ensureInstalled } from '../../server/launch/install.mjs';
import { ensurePackages, NEEDS } from '../../server/launch/packages.mjs';
import { ROOT } from '../../server/launch/stamp.mjs';

// `npm run soak [-- cycles]`: pulls and plugs the cables of a simulated barn, 500 times unless told otherwise.
ensurePackages(NEEDS.test);
ensureInstalled();
const { runnerImport } = await import('vite');
const { module } = await runnerImport(join(ROOT, 'tests/hardware/soak.ts'), {
  root: ROOT,
  configFile: false,
  logLevel: 'error',
});
console.log(await module.soak(Number(process.argv[2] ?? 500)));
process.exit(0);
