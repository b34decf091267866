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
    await at('unit');
    await kiosk.tap('first-back');
    await kiosk.tap('choose-en');
    await kiosk.tap('choose-lb');
    expect(await at('platform')).toMatchObject({ weightUnit: 'lb', language: 'en' });
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
    await at(null);
    await kiosk.page.getByTestId('door-platform').waitFor();
    expect(kiosk.complaints).toEqual([]);
  },
);
