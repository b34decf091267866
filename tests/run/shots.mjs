import { join } from 'node:path';
import { ensureInstalled } from '../../server/launch/install.mjs';
import { ensurePackages, NEEDS } from '../../server/launch/packages.mjs';
import { ROOT } from '../../server/launch/stamp.mjs';

// `npm run shots`: every screen as a picture, in both faces and both languages, below tests/shots/out.
ensurePackages(NEEDS.test);
ensureInstalled();
const { takeShots } = await import('../kiosk/preview/shots.mjs');
const outDir = join(ROOT, 'tests/shots/out');
/** Spanish words are longer: all of them on the smallest panel, the fullest screens on the others. */
const OTHER_SIZES = [
  { width: 1024, height: 600 },
  { width: 720, height: 1280 },
];
const FULLEST =
  /^(home|visit-who|offered|offered-unanswered|prove-jug|whom|animal|shed|logged|jug-dilution)$/;
const runs = [
  { outDir },
  { outDir: join(outDir, 'es'), language: 'es' },
  { outDir: join(outDir, 'es'), language: 'es', sizes: OTHER_SIZES, faces: ['dim'], only: FULLEST },
];
for (const run of runs) {
  const { pictures, faults } = await takeShots(run);
  console.log(`${pictures} pictures are in ${run.outDir}.`);
  for (const fault of faults) console.log(fault);
}
