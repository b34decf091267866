import { existsSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ON_PHONE_SCENES, SCENES } from '../kiosk/preview/scenes.ts';
import { allFaults } from './gallery/all-faults.ts';
import { PHONES, SMALLEST } from './gallery/panels.ts';
import { type Gallery, openGallery, type Shown } from './gallery/walk.ts';
import { CHROMIUM } from './kiosk-page.ts';

const canRun = existsSync(CHROMIUM);
/**
 * Where a scene fits worst: on the smallest panel, in the language with the longer words, at night, for which the checker
 * of barriers is asked too. All the rest is looked at by `npm run soak -- screens`.
 */
const WORST = { panels: [SMALLEST], faces: ['dim'], words: ['es'] } as const;
/** One scene in so many is looked at so, and one in so many in the light of an open door, where only colours differ. */
const NIGHT_EACH = 3;
const GLARE_EACH = 24;
/** One more than the smallest machine that runs this has processors, since a page also waits. */
const PAGES = 3;

let gallery: Gallery;

beforeAll(async () => {
  if (canRun) gallery = await openGallery();
}, 120_000);

afterAll(async () => {
  await gallery?.close();
});

test.runIf(canRun)(
  'what a keeper sees can be read and touched, and bars nobody',
  { timeout: 600_000 },
  async () => {
    const each = (step: number) => SCENES.filter((_, at) => at % step === 0);
    const night = await gallery.walk({ ...WORST, scenes: each(NIGHT_EACH), look: allFaults }, PAGES);
    const glare = { ...WORST, faces: ['glare'], scenes: each(GLARE_EACH), look: allFaults } as const;
    expect([...night, ...(await gallery.walk(glare, PAGES))]).toEqual([]);
  },
);

test.runIf(canRun)('the page on a phone can be read and touched, and bars nobody', async () => {
  expect(await gallery.walk({ ...WORST, panels: PHONES, scenes: ON_PHONE_SCENES, look: allFaults })).toEqual(
    [],
  );
});

/** What is done to a plate of the offer, or to the words on it, and what must then be found wrong. */
const SPOILT: readonly (readonly [selector: string, css: string, found: RegExp])[] = [
  ['', 'min-width: 0; max-width: 60px', /mm wide/],
  ['', 'margin-left: -30px', /mm apart/],
  ['', 'transform: translateX(700px)', /off the panel/],
  ['', 'transform: translateY(-90px)', /lies on/],
  ['span', 'font-size: 12px', /capitals of/],
  ['span', 'color: #555', /contrast of/],
  ['span', 'display: none', /button-name/],
];

test.runIf(canRun)('a screen that is spoilt is found', async () => {
  const scenes = SCENES.filter(({ name }) => name === 'offered');
  const missed: string[] = [];
  const look = async (page: Page, shown: Shown) => {
    for (const [selector, css, wanted] of SPOILT) {
      const plate = page.locator(`[data-testid="other-outcome"] ${selector}`).first();
      const dress = (style: string) =>
        plate.evaluate((element, text) => {
          (element as HTMLElement).style.cssText = text;
        }, style);
      await dress(css);
      const found = await allFaults(page, shown);
      await dress('');
      if (!found.some((fault) => wanted.test(fault))) missed.push(`${css}: ${found.join('; ')}`);
    }
    return allFaults(page, shown);
  };
  expect(await gallery.walk({ ...WORST, scenes, look })).toEqual([]);
  expect(missed).toEqual([]);
});
