import { ensureBuilt } from './build.mjs';
import { ensureEar } from './ear.mjs';
import { ensurePackages, NEEDS } from './packages.mjs';

// `npm start` and `npm run demo`: installs what is missing, builds what is stale, then runs the server in this process.
try {
  await ensureBuilt();
  ensurePackages([...NEEDS.demo, ...NEEDS.ear]);
  ensureEar();
} catch (error) {
  console.error(`Byreside could not be built: ${error instanceof Error ? error.message : error}`);
  process.exit(1);
}
await import('../../dist/server/main.js');
