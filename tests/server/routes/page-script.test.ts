import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { pageScript } from '../../../server/routes/pages.ts';

const folder = mkdtempSync(join(tmpdir(), 'byreside-page-'));
afterAll(() => rmSync(folder, { recursive: true }));

test.each([
  ['<script type="module" crossorigin src="./assets/index-B4x.js"></script>', 'index-B4x.js'],
  ['<link rel="stylesheet" href="./assets/index-C.css"><script src="index-D.js"></script>', 'index-D.js'],
  ['<p>no script</p>', null],
])('the page %s begins with %s', (html, script) => {
  writeFileSync(join(folder, 'index.html'), html);
  expect(pageScript(folder)).toBe(script);
});

test('a folder without a page has none', () => {
  expect(pageScript(join(folder, 'nothing'))).toBeNull();
});
