import { pageSize } from './page-size.ts';
import type { Figure } from './table.ts';

/** What the page fetches before it draws anything, against all of it. */
export async function pageFigures(): Promise<Figure[]> {
  const { start, all } = await pageSize();
  return [
    {
      what: 'scripts at start, after gzip',
      ratio: start / all,
      against: 'all scripts of the page',
      raw: `${(start / 1000).toFixed(1)} kB of ${(all / 1000).toFixed(1)} kB`,
    },
  ];
}
