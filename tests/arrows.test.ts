import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { wrongArrows } from './run/arrows.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

function roomsWith(file: string, text: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'arrows-'));
  for (const room of ['core', 'shared', 'hardware', 'server', 'kiosk']) mkdirSync(join(folder, room));
  writeFileSync(join(folder, file), text);
  return folder;
}

test('no room imports against the plan of the house', () => {
  expect(wrongArrows(root)).toEqual([]);
});

test.each([
  ['core/a.ts', `import { x } from '../shared/b.ts';`],
  ['core/a.ts', `import { readFileSync } from 'node:fs';`],
  ['core/a.ts', `const x = import('fastify');`],
  ['shared/a.ts', `export { x } from '../server/b.ts';`],
  ['hardware/a.ts', `import type { X } from '../shared/b.ts';`],
  ['server/a.ts', `import {\n  x,\n} from '../kiosk/b.ts';`],
  ['kiosk/a.svelte', `<script lang="ts">\n  import x from '../hardware/b.ts';\n</script>`],
])('%s that says %s is found out', (file, text) => {
  expect(wrongArrows(roomsWith(file, text))).toHaveLength(1);
});

test('an import along the arrows is let through', () => {
  expect(wrongArrows(roomsWith('server/a.ts', `import { x } from '../core/b.ts';`))).toEqual([]);
});
