import { existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { heardQuantity } from '../../core/speech/spoken-quantity.ts';
import { has, type KioskProcess, startKiosk } from '../process/kiosk-process.ts';
import { bringToOffer } from './bring-to-offer.ts';
import { CHROMIUM, type KioskPage, openKiosk } from './kiosk-page.ts';

const canRun = existsSync(CHROMIUM) && has('espeak-ng');
let server: KioskProcess;
let kiosk: KioskPage;
/** The sounds the page fetched, in order. */
const fetched: Buffer[] = [];

beforeAll(async () => {
  if (!canRun) return;
  server = await startKiosk({ BYRESIDE_DATA: mkdtempSync(join(tmpdir(), 'voice-')) });
  kiosk = await openKiosk(server.base);
  kiosk.page.on('response', async (response) => {
    if (response.url().endsWith('.wav')) fetched.push(await response.body());
  });
  // What the page starts to play is noted from outside, by the browser's own means.
  await kiosk.page.addInitScript(() => {
    const started: number[] = [];
    Object.assign(window, { started });
    const start = AudioBufferSourceNode.prototype.start;
    AudioBufferSourceNode.prototype.start = function (...when) {
      started.push(this.buffer?.duration ?? 0);
      return start.apply(this, when);
    };
  });
  await kiosk.page.reload();
  await server.until((s) => s.platform.link === 'ready' && s.bench.link === 'ready', 'both scales ready');
});

afterAll(async () => {
  await kiosk?.close();
  server?.child.kill('SIGTERM');
});

/** How long each buffer lasts that the page has started, in seconds. */
const started = () => kiosk.page.evaluate(() => (window as unknown as { started: number[] }).started);

/** Processes of the server that wait to speak. */
function engines(): number[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .filter((pid) => {
      try {
        const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
        return (
          stat.includes('(espeak-ng)') && Number(stat.split(') ')[1]?.split(' ')[1]) === server.child.pid
        );
      } catch {
        return false;
      }
    })
    .map(Number);
}

test.runIf(canRun)('nothing is heard before the page is touched, and the state says why', async () => {
  expect((await server.state()).voice).toMatchObject({ engine: 'kiosk', muted: false });
  await kiosk.tap('safety-read');
  await server.until((s) => s.voice.heard === 'heard', 'the page unlocked by a touch');
});

test.runIf(canRun)('a dose is spoken aloud: its sound is fetched, decodes, and is played', async () => {
  await bringToOffer(server);
  const state = await server.until((s) => s.offer !== null, 'the dose');
  const spoken = await server.until((s) => s.voice.speaking?.what === 'dose', 'the dose spoken');
  const said = heardQuantity(spoken.voice.speaking?.text.split(/, (?=two|three|\S+ mil)|\. /)[0] ?? '', 'en');
  expect(said).toEqual({ value: state.offer?.volumeMl, unit: 'mL' });
  await expect.poll(() => fetched.length).toBeGreaterThan(0);
  const heard = await kiosk.page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
    const buffer = await new OfflineAudioContext(1, 1, 22_050).decodeAudioData(bytes.buffer);
    return { seconds: buffer.duration, loudest: Math.max(...buffer.getChannelData(0)) };
  }, fetched.at(-1)?.toString('base64') ?? '');
  expect(heard.loudest).toBeGreaterThan(0.1);
  expect(heard.seconds).toBeGreaterThan(0.5);
  await expect.poll(async () => (await started()).some((s) => s > 1)).toBe(true);
  expect(kiosk.complaints).toEqual([]);
});

test.runIf(canRun)(
  'with the engine killed mid-sentence the round goes on, and the next sentence is heard',
  async () => {
    const killed = engines();
    expect(killed.length).toBeGreaterThan(0);
    for (const pid of killed) process.kill(pid, 'SIGKILL');
    const before = fetched.length;
    const { offer } = await server.state();
    await server.send({ type: 'give', offerId: offer?.id ?? '', outcome: 'whole' });
    await expect.poll(server.treatments).toHaveLength(1);
    await server.until((s) => s.voice.speaking?.what === 'logged', 'logged, spoken');
    await expect.poll(() => fetched.length).toBeGreaterThan(before);
  },
);

test.runIf(canRun)('muted it is silent, and the frame shows it', async () => {
  const { voice } = await server.state();
  const { language, voice: name, rate, volume } = voice;
  await server.send({ type: 'set-voice', voice: { language, voice: name, rate, volume, muted: true } });
  await server.until((s) => s.voice.speaking === null, 'silence');
  await kiosk.page.getByTestId('mute-lamp').waitFor();
  const before = fetched.length;
  await server.send({ type: 'try-voice', earcon: null });
  await new Promise((resolve) => setTimeout(resolve, 500));
  expect(fetched.length).toBe(before);
});
