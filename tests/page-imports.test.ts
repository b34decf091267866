import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
/** Imports that stay in the page: those of types alone are gone once it is built. */
const KEPT =
  /^\s*(?:import|export)\b(?!\s+type\b)[^'"]*?\bfrom\s*['"](\.[^'"]+)['"]|\bimport\s*\(\s*['"](\.[^'"]+)['"]\s*\)/gm;

/** Every file that the files named lead to, as paths below the root. */
function reachedFrom(files: readonly string[]): Set<string> {
  const [reached, open] = [new Set(files), [...files]];
  for (let file = open.pop(); file !== undefined; file = open.pop()) {
    for (const [, plain, lazy] of readFileSync(join(root, file), 'utf8').matchAll(KEPT)) {
      const target = relative(root, join(root, dirname(file), plain ?? lazy ?? ''));
      if (!/\.(ts|svelte)$/.test(target) || reached.has(target)) continue;
      reached.add(target);
      open.push(target);
    }
  }
  return reached;
}

function filesOf(room: string): string[] {
  return readdirSync(join(root, room), { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(ts|svelte)$/.test(path))
    .map((path) => join(room, path));
}

describe('what the page carries', () => {
  const page = reachedFrom(filesOf('kiosk'));

  test('is followed into core', () => {
    expect(page.has('core/quantity/show.ts')).toBe(true);
  });

  test('leaves out the schemas of the wire: the server that gave the page out checks what it sends', () => {
    const withSchemas = [...page].filter((file) => /from 'zod'/.test(readFileSync(join(root, file), 'utf8')));
    expect(withSchemas).toEqual([]);
  });

  test('leaves out the quantiles, which are 370 kB of library', () => {
    expect(page.has('core/statistics/quantiles.ts')).toBe(false);
    expect(reachedFrom(['core/reduction/judge.ts']).has('core/statistics/quantiles.ts')).toBe(true);
  });
});
