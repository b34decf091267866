import { existsSync, mkdtempSync, readdirSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { LARGEST_PHOTO } from '../../server/herd/photos.ts';
import { type KioskProcess, startKiosk } from '../process/kiosk-process.ts';
import { CHROMIUM, type KioskPage, openKiosk } from './kiosk-page.ts';

const FAKE_CAMERA = ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream'];
const hasBrowser = existsSync(CHROMIUM);
const folder = mkdtempSync(join(tmpdir(), 'photo-'));
let server: KioskProcess;
let kiosk: KioskPage;

beforeAll(async () => {
  if (!hasBrowser) return;
  server = await startKiosk({ BYRESIDE_DATA: folder });
  kiosk = await openKiosk(server.base, FAKE_CAMERA);
});

afterAll(async () => {
  await kiosk?.close();
  server?.child.kill('SIGTERM');
});

test.runIf(hasBrowser)(
  'a photo is taken by taps, kept small on the disk, and shown on the tile and the page',
  async () => {
    await kiosk.tap('safety-read');
    await kiosk.tap('door-animals');
    await kiosk.tap('animal-tile');
    await kiosk.tap('edit');
    if (!(await kiosk.page.getByTestId('edit-photo').isVisible())) await kiosk.tap('page-after');
    await kiosk.tap('edit-photo');
    await kiosk.page.waitForFunction(() => (document.querySelector('video')?.videoWidth ?? 0) > 0);
    await kiosk.tap('photo-take');
    await kiosk.tap('photo-keep');
    const pictured = await server.until(
      (state) => state.animals.some(({ photo }) => photo !== null),
      'the photo',
    );
    const animal = pictured.animals.find(({ photo }) => photo !== null);
    const [file] = readdirSync(join(folder, 'demo-photos'));
    expect(animal?.photo).toBe(file);
    const { size } = statSync(join(folder, 'demo-photos', file ?? ''));
    expect(size).toBeGreaterThan(1000);
    expect(size).toBeLessThan(LARGEST_PHOTO);
    // Leaving the page first makes the next address a fresh load, though only its "#" part differs.
    await kiosk.page.goto('about:blank');
    await kiosk.page.goto(`${server.base}/#animals`);
    const shown = kiosk.page.locator(`[data-animal="${animal?.id}"] img`);
    await shown.waitFor();
    await expect
      .poll(() => shown.evaluate((image) => (image as HTMLImageElement).naturalWidth))
      .toBeGreaterThan(100);
    expect(kiosk.complaints).toEqual([]);
  },
);
