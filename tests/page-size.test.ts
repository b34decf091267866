import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { type PageSize, pageSize } from './bench/page-size.ts';

/** Whether a file asks for the words of every screen. */
function usesAllWords(path: string): boolean {
  const source = readFileSync(fileURLToPath(new URL(`../${path}`, import.meta.url)), 'utf8');
  return /import \{[^}]*\buseWords\b/.test(source);
}

describe('what the page fetches before it draws anything', () => {
  let page: PageSize;
  beforeAll(async () => {
    page = await pageSize();
  }, 300_000);

  test('is 80 kB at most after gzip, without fonts', () => {
    expect(page.start).toBeGreaterThan(20_000);
    expect(page.start).toBeLessThanOrEqual(80_000);
  });

  test('is Home and the round, in English', () => {
    expect(page.modules).toEqual(
      expect.arrayContaining([
        'kiosk/screens/Home.svelte',
        'kiosk/platform/Offered.svelte',
        'kiosk/words/en.ts',
      ]),
    );
  });

  test('holds no word of another language, nor of a screen that is fetched later', () => {
    const words = page.modules.filter((path) => path.startsWith('kiosk/words/'));
    expect(words.filter((path) => /\/es[-.]|en-whole/.test(path))).toEqual([]);
  });

  test('asks for no word that is not there from the start', () => {
    const late = page.modules.filter((path) => path.startsWith('kiosk/') && usesAllWords(path));
    expect(late).toEqual([]);
  });
});
