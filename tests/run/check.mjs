import { ensureInstalled } from '../../server/launch/install.mjs';
import { run } from '../../server/launch/shell.mjs';
import { ROOT } from '../../server/launch/stamp.mjs';
import { wrongArrows } from './arrows.mjs';

// `npm run check`: format, lint, types, import arrows. Tests are `npm test`.
ensureInstalled();
try {
  run('node_modules/.bin/biome', ['check', '--error-on-warnings', '.']);
  for (const project of ['.', 'core', 'tests']) run('node_modules/.bin/tsc', ['-p', project, '--noEmit']);
  run('node_modules/.bin/svelte-check', [
    '--tsgo',
    '--tsconfig',
    'kiosk/tsconfig.json',
    '--fail-on-warnings',
  ]);
  const wrong = wrongArrows(ROOT);
  if (wrong.length > 0) throw new Error(`imports that go the wrong way:\n  ${wrong.join('\n  ')}`);
  console.log('Format, lint, types and import arrows are in order.');
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}
