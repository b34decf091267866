import { existsSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { seededRandom } from '../../hardware/simulator/random.ts';
import { CHROMIUM } from './kiosk-page.ts';
import { TOUCHED_SCREENS, touchScreen } from './touch-screen.ts';
import { TouchedFarm } from './touched-farm.ts';

const canRun = existsSync(CHROMIUM);
/** Touches on each screen; `npm run soak -- monkey` makes ten thousand. */
const TOUCHES = 30;
const farm = new TouchedFarm();

beforeAll(async () => {
  if (canRun) await farm.open('home');
}, 240_000);

afterAll(() => farm.close());

test.runIf(canRun)('the watch sees a dose that is given by a long press, so it would see any', async () => {
  const id = await farm.open('platform');
  const before = (await farm.server.treatments()).length;
  await farm.kiosk.page.waitForTimeout(500);
  await farm.kiosk.press('give', 700);
  await expect.poll(async () => (await farm.server.treatments()).length).toBe(before + 1);
  const [dose] = await farm.doses();
  expect(dose).toMatchObject({ type: 'give', control: 'give' });
  expect(dose?.heldMs).toBeGreaterThanOrEqual(300);
  expect((await farm.server.treatments()).some(({ animal }) => animal === id)).toBe(true);
});

test.runIf(canRun)(
  'a sleeve drawn across the screen leads back to no page that was there before',
  async () => {
    await farm.open('home');
    const { page } = farm.kiosk;
    const here = page.url();
    const touch = await page.context().newCDPSession(page);
    const at = (type: string, points: readonly { x: number; y: number }[]) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: points } as never);
    for (const y of [12, 150, 300, 470]) {
      await at('touchStart', [{ x: 40, y }]);
      for (let x = 100; x <= 780; x += 40) await at('touchMove', [{ x, y }]);
      await at('touchEnd', []);
      await page.waitForTimeout(600);
      expect(page.url()).toBe(here);
    }
  },
);

test.runIf(canRun).each(TOUCHED_SCREENS)(
  'random touches on %s break nothing, and no dose leaves without a deliberate press on its control',
  // On a busy machine a browser may leave each touch unanswered for seconds.
  { timeout: 60_000 + 4000 * TOUCHES },
  async (screen) => {
    const random = seededRandom(TOUCHED_SCREENS.indexOf(screen) + 1);
    expect((await touchScreen(farm, screen, TOUCHES, random)).faults).toEqual([]);
  },
);
