import { join } from 'node:path';
import { runnerImport } from 'vite';
import { ROOT } from '../../server/launch/stamp.mjs';

// Runs an exported function of a file of the bench, and prints what it comes to as JSON on the last line.
const [file, name, args] = process.argv.slice(2);
const { module } = await runnerImport(join(ROOT, 'tests/bench', file), {
  root: ROOT,
  configFile: false,
  logLevel: 'error',
});
console.log(JSON.stringify(await module[name](...JSON.parse(args))));
process.exit(0);
