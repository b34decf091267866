import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DAY_MS } from '../../core/moment.ts';
import { testApp } from '../server/make/test-app.ts';
import type { TestBarn } from '../server/make/test-barn.ts';
import { barnWithGoats, dose } from '../server/make/worm-test.ts';
import { CHROMIUM, type KioskPage, openKiosk } from './kiosk-page.ts';

const hasBrowser = existsSync(CHROMIUM);
let barn: TestBarn;
let kiosk: KioskPage;
let close: () => Promise<unknown>;

/** The built page on a server over a clock moved by hand: two weeks pass in no time. */
beforeAll(async () => {
  if (!hasBrowser) return;
  const goats = barnWithGoats(3);
  barn = goats.barn;
  for (const id of goats.ids) dose(barn, id);
  barn.send({ type: 'safety-read' });
  const { app } = await testApp(null, barn, join(process.cwd(), 'dist/kiosk'));
  close = () => app.close();
  kiosk = await openKiosk(await app.listen({ port: 0, host: '127.0.0.1' }));
});

afterAll(async () => {
  await kiosk?.close();
  await close?.();
});

async function shows(testId: string, text: string | RegExp): Promise<void> {
  await expect.poll(() => kiosk.text(testId).catch(() => 'not there'), { timeout: 15_000 }).toMatch(text);
}

/** Enters the count of each goat by its tile and the keypad. */
async function count(eggs: readonly number[]): Promise<void> {
  for (const [i, seen] of eggs.entries()) {
    await kiosk.tap('sample-tile', `[data-animal="g-${i + 1}"]`);
    for (const digit of String(seen)) await kiosk.tap(`key-${digit}`);
    await kiosk.tap('key-done');
    await expect
      .poll(() => barn.barn.context.memory.eggCounts.at(-1)?.record, { timeout: 10_000 })
      .toMatchObject({ animalIds: [`g-${i + 1}`], eggs: seen });
  }
}

test.runIf(hasBrowser)(
  'a test is planned of the round, counted by keypad twice, and judged two weeks later',
  async () => {
    await kiosk.tap('door-worm-check');
    await kiosk.tap('worm-tests');
    await kiosk.tap('plan-test');
    await kiosk.tap('method', '[data-factor="50"]');
    await kiosk.tap('design-paired');
    await shows('test-need', /10 animals|8 animals/);
    await kiosk.tap('plan-it');
    await shows('test-row', /Levamisole, goat.*count before/);
    await kiosk.tap('test-row');
    await kiosk.tap('stage-before');
    await count([42, 55, 38]);
    await kiosk.tap('back');
    await shows('test-step', 'waiting');

    barn.clock.pass(10 * DAY_MS);
    barn.barn.changed();
    await shows('test-step', 'SAMPLE NOW');
    await kiosk.tap('stage-after');
    await count([12, 9, 15]);
    await kiosk.tap('back');
    await shows('verdict', 'RESISTANT');
    // 1 - 36/135
    await shows('efficacy', '73.3 % fewer eggs');
    await shows('extreme-care', /Fewer than 5 animals/);
    await kiosk.tap('test-why');
    await shows('why-line', /Beta-negative-binomial/);

    await kiosk.page.goto(kiosk.page.url().replace(/#.*/, '#jug'));
    await kiosk.page.reload();
    await shows('failed-test', 'resistant: goat');
  },
  240_000,
);

test.runIf(hasBrowser)('the page has made no complaint', () => {
  expect(kiosk.complaints).toEqual([]);
});
