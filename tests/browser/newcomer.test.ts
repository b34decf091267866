import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type KioskProcess, startKiosk } from '../process/kiosk-process.ts';
import { CHROMIUM, type KioskPage, openKiosk } from './kiosk-page.ts';

const hasBrowser = existsSync(CHROMIUM);
const data = mkdtempSync(join(tmpdir(), 'newcomer-'));
/** Two are enough to come back to the platform; `npm run soak -- newcomer` leads five on. */
const ANIMALS = Number(process.env['BYRESIDE_TEST_ANIMALS'] ?? 2);
let server: KioskProcess;
let kiosk: KioskPage;

beforeAll(async () => {
  if (!hasBrowser) return;
  server = await startKiosk({ BYRESIDE_DATA: data });
  kiosk = await openKiosk(server.base);
  await server.until((s) => s.platform.link === 'ready' && s.bench.link === 'ready', 'both scales ready');
});

afterAll(async () => {
  await kiosk?.close();
  server?.child.kill('SIGTERM');
  rmSync(data, { recursive: true, force: true });
});

/** Does on the demo's scales what the screen asks for; all by touch. */
async function asAsked(): Promise<void> {
  await kiosk.tap('tray-open');
  await kiosk.tap('tray-as-asked');
}

/** Holds a part once it has stood. */
async function hold(testId: string): Promise<void> {
  await kiosk.page.getByTestId(testId).first().waitFor();
  await kiosk.page.waitForTimeout(400);
  await kiosk.press(testId, 900);
}

test.runIf(hasBrowser)(
  'a newcomer mixes a jug by touch alone',
  async () => {
    await kiosk.tap('safety-read');
    await kiosk.tap('door-jug');
    await kiosk.tap('packet-tile');
    await kiosk.tap('mix-this');
    await kiosk.tap('water-tile', '[data-celsius="20"]');
    await asAsked();
    await server.until((s) => s.bench.steady && (s.bench.live ?? 0) > 100, 'the jug at rest');
    await kiosk.tap('mix-next');
    await hold('jug-is-new');
    await asAsked();
    await server.until(
      (s) => s.jug.step === 'pour' && s.jug.pour.advice === 'stop' && s.jug.pour.steady,
      'the mark',
    );
    await kiosk.tap('mix-next');
    await server.until((s) => s.jug.step === 'powder', 'the powder asked for');
    await asAsked();
    await server.until((s) => s.jug.step === 'dissolve', 'the powder seen');
    await kiosk.tap('mix-next');
    await kiosk.tap('mix-next');
    await server.until(({ jugs }) => jugs.some(({ form }) => form === 'jug'), 'the jug in service');
  },
  120_000,
);

test.runIf(hasBrowser)(
  'and doses animals from it, one after the other',
  async () => {
    await kiosk.tap('home');
    await kiosk.tap('door-platform');
    await kiosk.tap('jug-tile', ':has-text("Levamisole")');
    await kiosk.tap('prove-jug-yes');
    for (let given = 1; given <= ANIMALS; given += 1) {
      await server.until(
        (s) => s.platform.verdict === 'empty' && s.round.step === 'visit',
        'an empty platform',
      );
      await asAsked();
      await server.until((s) => s.round.step === 'cautions' || s.offer !== null, 'an animal weighed');
      for (;;) {
        const { round } = await server.state();
        if (round.step !== 'cautions') break;
        const asked = round.cautions.filter(
          ({ code, strength }) => strength === 'ask' && !round.accepted.includes(code),
        );
        await hold('accept-caution');
        await server.until(
          (s) => s.round.step !== 'cautions' || s.round.accepted.length > round.accepted.length,
          `the answer to ${asked[0]?.code}`,
        );
      }
      await hold('give');
      await expect.poll(server.treatments, { timeout: 15_000 }).toHaveLength(given);
      // Whoever finds a wrong dose finds the way back: the undo stands on the screen.
      await kiosk.page.getByTestId('undo').waitFor();
      await asAsked();
      await kiosk.tap('next');
    }
    const treatments = await server.treatments();
    expect(new Set(treatments.map(({ animal }) => animal)).size).toBe(ANIMALS);
    expect(kiosk.complaints).toEqual([]);
  },
  180_000,
);
