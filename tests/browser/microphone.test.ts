import { existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { wavOfSamples } from '../../hardware/mouth/wav.ts';
import { BASE } from '../kiosk/preview/base-state.ts';
import { startFakeServer } from '../kiosk/preview/fake-server.mjs';
import { earWith } from '../kiosk/preview/hearing-scenes.ts';
import { CHROMIUM, type KioskPage, openKiosk } from './kiosk-page.ts';

const hasBrowser = existsSync(CHROMIUM);
const RATE = 48_000;
const HZ = 1000;
const AMPLITUDE = 0.5;
const WHERE = 'dist/kiosk';

let server: Awaited<ReturnType<typeof startFakeServer>>;
let kiosk: KioskPage;

beforeAll(async () => {
  if (!hasBrowser) return;
  // Whole periods, so that the file can be played round and round without a seam.
  const tone = Float32Array.from(
    { length: RATE },
    (_, at) => AMPLITUDE * Math.sin((2 * Math.PI * HZ * at) / RATE),
  );
  const file = join(mkdtempSync(join(tmpdir(), 'microphone-')), 'tone.wav');
  writeFileSync(file, wavOfSamples(tone, RATE).bytes);
  server = await startFakeServer(WHERE);
  server.show({ ...BASE, ear: earWith({ source: null, listening: 'off' }) });
  kiosk = await openKiosk(server.url, [
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-audio-capture=${file}`,
  ]);
});

afterAll(async () => {
  await kiosk?.close();
  await server?.close();
});

const heard = (): Int16Array => {
  const bytes = Buffer.concat(server.sounds);
  return Int16Array.from({ length: bytes.length / 2 }, (_, at) => bytes.readInt16LE(2 * at));
};

test.runIf(hasBrowser)('nothing is sent before the first press to talk', async () => {
  await kiosk.page.getByTestId('talk').waitFor();
  await kiosk.page.waitForTimeout(300);
  expect(server.told.filter((message) => JSON.stringify(message).includes('microphone'))).toEqual([]);
  expect(server.sounds).toEqual([]);
});

test.runIf(hasBrowser)(
  'what the microphone hears arrives as it is: 16 kHz, one channel, the tone at its pitch and loudness',
  async () => {
    await kiosk.press('talk', 600);
    await expect
      .poll(() => server.told)
      .toEqual(
        expect.arrayContaining([
          { type: 'talk', on: true },
          { type: 'microphone', rate: 16_000, channels: 1 },
          { type: 'talk', on: false },
        ]),
      );
    await expect.poll(() => heard().length, { timeout: 20_000 }).toBeGreaterThan(3 * 16_000);
    expect(new Set(server.sounds.map(({ length }) => length))).toEqual(new Set([1024]));
    // The beginning may hold the silence before the device ran; two seconds from the middle are tone throughout.
    const tone = heard().subarray(16_000, 3 * 16_000);
    const crossings = tone.filter((sample, at) => at > 0 && sample >= 0 && (tone[at - 1] ?? 0) < 0).length;
    // A busy machine's audio stumbles now and then; another rate than was told would be off by a tenth or more.
    expect(Math.abs(crossings / 2 / HZ - 1)).toBeLessThan(0.03);
    const rms = Math.sqrt(tone.reduce((sum, sample) => sum + sample ** 2, 0) / tone.length) / 32_768;
    // A sine of amplitude A has the root mean square A / sqrt 2; a second of gain or silence would show.
    expect(20 * Math.log10(rms / (AMPLITUDE / Math.SQRT2))).toBeCloseTo(0, 0);
    expect(kiosk.complaints).toEqual([]);
  },
);

test.runIf(hasBrowser)('the microphone test at Shed shows how loud that is', async () => {
  await kiosk.page.evaluate(() => {
    location.hash = 'shed/listening/microphone';
  });
  await kiosk.page.reload();
  await expect
    .poll(async () => Number(await kiosk.page.getByTestId('level').getAttribute('data-db')), {
      timeout: 20_000,
    })
    .toBe(-9);
  expect(await kiosk.text('loudness')).toBe('Good.');
});
