import { join } from 'node:path';
import { runnerImport } from 'vite';
import { ROOT } from '../../../server/launch/stamp.mjs';

// Streams one kind of file from a database and tells what that did to the memory of this process.
const { module } = await runnerImport(join(ROOT, 'tests/bench/ten-years/stream-one.ts'), {
  root: ROOT,
  configFile: false,
  logLevel: 'error',
});
const [path, kind, mostBytes] = process.argv.slice(2);
console.log(JSON.stringify(await module.streamOne(path, kind, Number(mostBytes))));
