import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, expect, test } from 'vitest';
import { seededRandom } from '../../hardware/simulator/random.ts';
import { KioskState } from '../../shared/state.ts';
import { type KioskProcess, startKiosk } from '../process/kiosk-process.ts';
import { bringToOffer } from './bring-to-offer.ts';
import { CHROMIUM, type KioskPage, openKiosk } from './kiosk-page.ts';
import { type SentDose, touchAbout, watchDoses } from './monkey.ts';

const canRun = existsSync(CHROMIUM);
/** Touches on each screen; `npm run soak -- monkey` asks for ten thousand. */
const TOUCHES = Number(process.env['BYRESIDE_TEST_TOUCHES'] ?? 30);
/** Touches between two looks, after which the monkey is brought back to the screen it is for. */
const BURST = 90;
const SCREENS = ['home', 'platform', 'jug', 'day-book', 'board', 'animals', 'worm-check', 'shed'] as const;

let server: KioskProcess;
let kiosk: KioskPage;
let doses: () => Promise<SentDose[]>;

/** A kiosk with a farm nobody has touched yet. */
async function anew(): Promise<void> {
  await leave();
  server = await startKiosk({ BYRESIDE_DATA: mkdtempSync(join(tmpdir(), 'monkey-')) });
  kiosk = await openKiosk(server.base);
  doses = await watchDoses(kiosk);
  await server.until((s) => s.platform.link === 'ready' && s.bench.link === 'ready', 'both scales ready');
  await server.send({ type: 'safety-read' });
}

async function leave(): Promise<void> {
  await kiosk?.close();
  server?.child.kill('SIGTERM');
}

beforeEach(async () => {
  if (canRun) await anew();
});

afterAll(leave);

/** Has a dose on offer, on a new farm where the goats of this one are all dosed. */
async function offerAgain(): Promise<string> {
  const offered = (await bringToOffer(server)) ?? (await anew().then(() => bringToOffer(server)));
  if (offered === null) throw new Error('no goat of the demo farm can be dosed');
  return offered;
}

/** Loads the page anew at a screen. */
async function open(screen: string): Promise<void> {
  await kiosk.page.goto('about:blank');
  await kiosk.page.goto(`${server.base}/#${screen}`);
  await kiosk.page.waitForSelector('.kiosk[data-status="live"]');
}

test.runIf(canRun)('the watch sees a dose that is given by a long press, so it would see any', async () => {
  const id = await offerAgain();
  await open('platform');
  const before = (await server.treatments()).length;
  await kiosk.page.waitForTimeout(500);
  await kiosk.press('give', 700);
  await expect.poll(async () => (await server.treatments()).length).toBe(before + 1);
  const [dose] = await doses();
  expect(dose).toMatchObject({ type: 'give', control: 'give' });
  expect(dose?.heldMs).toBeGreaterThanOrEqual(300);
  expect((await server.treatments()).some(({ animal }) => animal === id)).toBe(true);
});

test.runIf(canRun).each(SCREENS)(
  'random touches on %s break nothing, and no dose leaves without a deliberate press on its control',
  { timeout: 60_000 + 400 * TOUCHES },
  async (screen) => {
    const random = seededRandom(SCREENS.indexOf(screen) + 1);
    const sent: SentDose[] = [];
    for (let left = TOUCHES; left > 0; left -= BURST) {
      if (screen === 'platform') await offerAgain();
      const before = await server.treatments();
      await open(screen);
      await touchAbout(kiosk, Math.min(BURST, left), random);
      await kiosk.page.waitForTimeout(200);
      const burst = await doses();
      sent.push(...burst);
      expect((await server.treatments()).length - before.length).toBeLessThanOrEqual(burst.length);
    }
    for (const dose of sent) {
      expect(dose.control, JSON.stringify(dose)).toMatch(/^(give|answer)/);
      expect(dose.heldMs, JSON.stringify(dose)).toBeGreaterThanOrEqual(300);
    }
    KioskState.parse(await server.state());
    expect(kiosk.complaints).toEqual([]);
  },
);
