import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { pounds } from '../../core/quantity/mass.ts';
import { type KioskProcess, startKiosk } from '../process/kiosk-process.ts';
import { CHROMIUM, type KioskPage, openKiosk } from './kiosk-page.ts';

const THIRTY_FOUR_POUNDS = pounds(34).value;
const hasBrowser = existsSync(CHROMIUM);
let server: KioskProcess;
let kiosk: KioskPage;

beforeAll(async () => {
  if (!hasBrowser) return;
  server = await startKiosk({ BYRESIDE_DATA: mkdtempSync(join(tmpdir(), 'errand-')) });
  kiosk = await openKiosk(server.base);
  await server.until((s) => s.platform.link === 'ready' && s.bench.link === 'ready', 'both scales ready');
});

afterAll(async () => {
  await kiosk?.close();
  server?.child.kill('SIGTERM');
});

/** Waits until a part of the page shows a text. */
async function shows(testId: string, text: string | RegExp): Promise<void> {
  await expect.poll(() => kiosk.text(testId).catch(() => 'not there'), { timeout: 15_000 }).toMatch(text);
}

test.runIf(hasBrowser)('safety words come first, and the demo says what it is', async () => {
  await kiosk.tap('safety-read');
  await shows('demo-banner', /DEMO/);
  await shows('door-platform', /Platform/);
});

test.runIf(hasBrowser)('a jug is mixed by weight: water to the mark, the powder seen to arrive', async () => {
  await kiosk.tap('door-jug');
  await kiosk.tap('packet-tile');
  await shows('dilution-reason', /.+/);
  for (let looked = 0; looked < 6; looked += 1) {
    if (/946 mL/.test(await kiosk.text('dilution-volume'))) break;
    await kiosk.tap('dilution-next');
  }
  await kiosk.tap('mix-this');
  await kiosk.tap('water-tile', '[data-celsius="20"]');
  await server.tray({ do: 'place-jug' });
  await server.until((s) => s.bench.steady && (s.bench.live ?? 0) > 100, 'the jug at rest');
  await kiosk.tap('mix-next');
  await kiosk.press('jug-is-new', 800);
  // 902 g: one US quart less 41.6 mL of powder, as a scale in air shows it at 20 degC (oracle: facts on water).
  await shows('jug-target', /902 g/);

  await server.tray({ do: 'pour', gramsPerSecond: 300 });
  await server.until((s) => s.jug.step === 'pour' && s.jug.pour.advice !== 'pour', 'the pour near its mark');
  await server.tray({ do: 'pour', gramsPerSecond: 25 });
  await server.until((s) => s.jug.step === 'pour' && s.jug.pour.advice === 'stop', 'the mark');
  await server.tray({ do: 'pour', gramsPerSecond: 0 });
  const poured = await server.until((s) => s.jug.step === 'pour' && s.jug.pour.steady, 'the water at rest');
  const water = poured.jug.step === 'pour' ? (poured.jug.pour.nowGrams ?? 0) : 0;
  await shows('jug-now', new RegExp(`^${Math.round(water)} g$`));
  await kiosk.tap('mix-next');
  await server.until((s) => s.jug.step === 'powder', 'the powder asked for');
  await server.tray({ do: 'add-powder', packets: 1 });
  await server.until((s) => s.jug.step === 'dissolve', 'the powder seen');
  await kiosk.tap('mix-next');
  await shows('jug-strength', /^\d\d\.\d+ mg\/mL$/);
  await kiosk.tap('mix-next');

  const { jugs } = await server.until((s) => s.jugs.some(({ form }) => form === 'jug'), 'the jug in service');
  // Z = 1.002852 mL for each gram shown at 20 degC (facts on water), and 41.6 mL of powder.
  expect(jugs[0]?.strengthMgPerMl).toBeCloseTo(46_800 / (water * 1.002852 + 41.6), 3);
});

test.runIf(hasBrowser)(
  'a goat of 34 lb is held, may step off, and its dose stands until it is given',
  async () => {
    const before = await server.state();
    const goat = before.animals.find((animal) => animal.name === 'Thistle');
    await kiosk.tap('home');
    await kiosk.tap('door-platform');
    await kiosk.tap('jug-tile');
    // It still stands on the bench, which shows what it should: that proves it.
    await kiosk.tap('prove-jug-yes');
    await server.tray({ do: 'present-tag', animalId: goat?.id ?? '' });
    await server.until((s) => s.round.step === 'visit' && s.round.animal === goat?.id, 'the tag read');
    await server.tray({ do: 'lead-on', animalId: goat?.id ?? '', grams: THIRTY_FOUR_POUNDS, grade: 'calm' });
    const { offer } = await server.until((s) => s.offer !== null, 'the dose');
    expect(Math.abs((offer?.weightGrams ?? 0) / THIRTY_FOUR_POUNDS - 1)).toBeLessThan(0.02);

    await server.tray({ do: 'walk-off' });
    await server.until((s) => s.platform.verdict === 'empty', 'the deck empty');
    await shows('animal-name', /Thistle/);
    await shows('dose-volume', new RegExp(`^${offer?.volumeMl} mL$`));
    await shows('dose-syringe', /syringe/);
    await shows('dose-strength', /mg\/mL/);
    await shows('dose-interval', /mg\/kg/);
    await shows('platform-held', /^3[34]\.\d+ lb$/);
  },
);

test.runIf(hasBrowser)(
  'pulling the cable blanks the weight within 1.5 s, and plugging it in brings it back within 3 s',
  async () => {
    await server.tray({ do: 'pull-cable', role: 'platform' });
    const pulled = Date.now();
    await expect.poll(() => kiosk.page.getByTestId('link-platform').getAttribute('data-link')).toBe('lost');
    await expect.poll(async () => (await server.state()).platform.live).toBeNull();
    expect(Date.now() - pulled).toBeLessThan(1500);
    const lost = await server.state();
    expect(lost.platform).toMatchObject({ live: null, held: null, verdict: 'blank' });
    await shows('dose-volume', /mL$/);

    await server.tray({ do: 'plug-cable', role: 'platform' });
    const plugged = Date.now();
    await expect
      .poll(async () => (await server.state()).platform.link, { timeout: 5000, interval: 20 })
      .toBe('ready');
    expect(Date.now() - plugged).toBeLessThan(3000);
  },
);

test.runIf(hasBrowser)(
  'a short touch gives nothing; a deliberate press logs the dose once, and a reload keeps it',
  async () => {
    await kiosk.press('give', 120);
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect(await server.treatments()).toEqual([]);
    const { offer } = await server.state();
    await kiosk.press('give', 600);
    await expect.poll(server.treatments).toHaveLength(1);
    await shows('undo', /.+/);
    expect((await server.treatments())[0]).toMatchObject({
      offerId: offer?.id,
      volumeMl: offer?.volumeMl,
      animalName: 'Thistle',
      outcome: 'whole',
    });

    await kiosk.page.reload();
    await kiosk.tap('home');
    await kiosk.tap('door-daybook');
    await expect.poll(() => kiosk.page.getByTestId('daybook-row').count()).toBe(1);
    await shows('daybook-row', new RegExp(`Thistle.*${offer?.volumeMl} mL`));
    expect(await server.treatments()).toHaveLength(1);
  },
);

test.runIf(hasBrowser)('the page has made no complaint', () => {
  expect(kiosk.complaints).toEqual([]);
});
