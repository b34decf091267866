import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';

const core = new URL('../../core/', import.meta.url);
const modules = readdirSync(core, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.ts'))
  .sort();

test('there are core modules to load', () => {
  expect(modules.length).toBeGreaterThan(30);
});

// A module that exports `then` is taken for a promise by every dynamic import, and never arrives.
test.each(modules)('%s can be loaded by a dynamic import', async (path) => {
  const loaded: unknown = await import(new URL(path, core).href);
  expect(loaded).toBeTypeOf('object');
});
