import { join } from 'node:path';
import { ensureInstalled } from '../../server/launch/install.mjs';
import { ensurePackages, NEEDS } from '../../server/launch/packages.mjs';
import { ROOT } from '../../server/launch/stamp.mjs';

// `npm run shots`: every screen as a picture, in both faces, below tests/shots/out.
ensurePackages(NEEDS.test);
ensureInstalled();
const { takeShots } = await import('../kiosk/preview/shots.mjs');
const outDir = join(ROOT, 'tests/shots/out');
const { pictures, faults } = await takeShots({ outDir });
console.log(`${pictures} pictures are in ${outDir}.`);
for (const fault of faults) console.log(fault);
