import type { Page } from 'playwright-core';
import type { Shown } from './walk.ts';

/** All that is wrong with what is shown. What bars a person is the same in both faces, and looked for in one. */
export async function allFaults(page: Page, { face }: Pick<Shown, 'face'>): Promise<string[]> {
  const faults = await page.evaluate(() => window.gallery.faults());
  return face === 'dim' ? [...faults, ...(await page.evaluate(() => window.gallery.barriers()))] : faults;
}
