import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type KioskProcess, startKiosk } from '../process/kiosk-process.ts';
import { CHROMIUM, type KioskPage, openKiosk } from './kiosk-page.ts';

const hasBrowser = existsSync(CHROMIUM);
const data = mkdtempSync(join(tmpdir(), 'first-start-'));
let server: KioskProcess;
let kiosk: KioskPage;

beforeAll(async () => {
  if (!hasBrowser) return;
  writeFileSync(join(data, 'kiosk.json'), '{}');
  server = await startKiosk({ BYRESIDE_DATA: data });
  kiosk = await openKiosk(server.base);
});

afterAll(async () => {
  await kiosk?.close();
  server?.child.kill('SIGTERM');
  rmSync(data, { recursive: true, force: true });
});

const at = (step: string | null) => server.until(({ firstStart }) => firstStart === step, `the step ${step}`);

test.runIf(hasBrowser)(
  'a new farm is led from its language to its first approved rule by touch alone, and a reload goes on where it was',
  async () => {
    await kiosk.tap('safety-read');
    await kiosk.tap('choose-es');
    await at('panel');
    await kiosk.tap('first-back');
    await kiosk.tap('choose-en');
    await at('panel');
    await kiosk.tap('panel-size-less');
    await kiosk.tap('panel-fits');
    const { panel } = await at('unit');
    // A card two-hundredth narrower than on 7 in of 800 x 480.
    expect(panel.pxPerMm).toBeCloseTo(5.247 / 1.005, 3);
    await kiosk.tap('choose-lb');
    await kiosk.tap('other-zone');
    await kiosk.tap('region-Europe');
    await kiosk.tap('stretch-0');
    await kiosk.tap('zone-tile');
    await kiosk.tap('clock-right');
    await at('people');
    await kiosk.tap('person-new');
    for (const letter of 'ADA') await kiosk.tap(`letter-${letter}`);
    await kiosk.tap('letters-done');
    await kiosk.tap('person-tile', '[data-person="Ada"]');
    const settled = await at('platform');
    expect(settled).toMatchObject({
      weightUnit: 'lb',
      language: 'en',
      timeZone: expect.stringMatching('Europe/'),
    });
    expect(settled.shed.people).toEqual(['Ada']);
    await kiosk.page.reload();
    for (const step of ['bench', 'wand', 'syringes']) {
      await kiosk.tap('first-next');
      await at(step);
    }
    await kiosk.tap('syringe-tile');
    await server.until(({ shed }) => shed.syringes.some(({ onHand }) => onHand), 'a syringe on hand');
    await kiosk.tap('first-next');
    await at('rules');
    await kiosk.tap('regimen-tile', ':has-text("on the label")');
    await kiosk.tap('approve');
    await kiosk.page.getByTestId('approve-label').waitFor();
    await kiosk.page.waitForTimeout(350);
    await kiosk.press('approve-label', 900);
    await server.until(
      ({ shed }) => shed.regimens.some(({ approval }) => approval !== null),
      'a rule approved',
    );
    await kiosk.tap('first-next');
    await at('practice');
    await kiosk.tap('first-next');
    await at(null);
    await kiosk.page.getByTestId('door-platform').waitFor();
    expect(kiosk.complaints).toEqual([]);
  },
);
