import { existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test, vi } from 'vitest';
import { grams, kilograms } from '../../core/quantity/mass.ts';
import { systemTimers } from '../../hardware/serial/timers.ts';
import { createPtyCable } from '../../hardware/simulator/pty-cable.ts';
import { createSimScale } from '../../hardware/simulator/sim-scale.ts';
import type { SetupView } from '../../shared/setup.ts';
import { has, type KioskProcess, startKiosk } from './kiosk-process.ts';

const cleanUps: (() => unknown)[] = [];
afterEach(async () => {
  for (const cleanUp of cleanUps.splice(0).reverse()) await cleanUp();
});

async function start(env: Record<string, string>): Promise<KioskProcess> {
  const kiosk = await startKiosk(env);
  cleanUps.push(() => kiosk.child.kill('SIGKILL'));
  return kiosk;
}

/** A configured data folder, so that the kiosk is no demo. */
function dataFolder(): string {
  const data = mkdtempSync(join(tmpdir(), 'process-'));
  writeFileSync(join(data, 'kiosk.json'), '{"people": ["Wren"]}');
  return data;
}

function setupAt<S extends SetupView['step']>(kiosk: KioskProcess, step: S) {
  return kiosk
    .until((s) => s.shed.setup.step === step, `the set-up at ${step}`)
    .then((s) => s.shed.setup as Extract<SetupView, { step: S }>);
}

/** A platform scale that answers when asked, on a real port, with a load to set. */
async function plugIn() {
  const folder = mkdtempSync(join(tmpdir(), 'tty-'));
  mkdirSync(folder, { recursive: true });
  const on = { load: 0 };
  const scale = createSimScale({
    timers: systemTimers(),
    face: { unit: 'kg', division: grams(50) },
    capacity: kilograms(150),
    format: 'sma',
    load: () => grams(on.load),
    changing: () => false,
  });
  const cable = await createPtyCable(folder, 'unknown', scale.attach);
  if (cable === null) throw new Error('socat is not installed');
  cleanUps.push(async () => {
    scale.stop();
    await cable.stop();
  });
  return Object.assign(on, { path: cable.path });
}

/** Presses zero as a keeper does who is told that the scale still moves. */
async function zeroOnceStill(kiosk: KioskProcess): Promise<void> {
  await vi.waitFor(
    async () => {
      expect(await kiosk.send({ type: 'zero', role: 'platform' })).toMatchObject({ ok: true });
    },
    { timeout: 10_000, interval: 100 },
  );
}

test.runIf(has('socat'))(
  'an unknown scale is recognised, tried, proved and kept by intents alone, and is still there after a restart',
  async () => {
    const scale = await plugIn();
    const data = dataFolder();
    const kiosk = await start({ BYRESIDE_DATA: data });
    expect(await kiosk.send({ type: 'ports-look' })).toMatchObject({ ok: true });
    await setupAt(kiosk, 'ports');
    await kiosk.send({ type: 'device-listen', role: 'platform', path: scale.path });
    await setupAt(kiosk, 'listening');
    const { proposals } = await setupAt(kiosk, 'proposals');
    expect(proposals[0]).toMatchObject({ profile: 'sma', baud: 9600, unit: 'kg', unitKnown: true });

    scale.load = 20_000;
    await kiosk.send({ type: 'device-try', role: 'platform', index: 0 });
    const trial = await kiosk.until(
      ({ shed: { setup } }) => setup.step === 'trial' && setup.still && setup.live === 20_000,
      'the weight at rest',
    );
    // What is on trial weighs nothing yet.
    expect(trial.platform).toMatchObject({ link: 'absent', live: null });
    expect(await kiosk.send({ type: 'device-prove', loadId: 'kg-20' })).toMatchObject({ ok: true });
    expect(await setupAt(kiosk, 'trial')).toMatchObject({ proof: { verdict: 'right' } });
    expect(await kiosk.send({ type: 'device-keep' })).toMatchObject({ ok: true });
    await kiosk.until((s) => s.platform.live === 20_000 && s.shed.setup.step === 'idle', 'the kept scale');
    expect(JSON.parse(readFileSync(join(data, 'kiosk.json'), 'utf8'))).toEqual({
      people: ['Wren'],
      devices: {
        platform: {
          path: scale.path,
          profile: 'sma',
          baud: 9600,
          capacityGrams: 150_000,
          divisionGrams: 50,
        },
      },
    });

    kiosk.child.kill('SIGKILL');
    scale.load = 600;
    const again = await start({ BYRESIDE_DATA: data });
    await again.until(
      (s) => s.platform.live === 600 && s.platform.verdict === 'not-zeroed',
      'the scale again',
    );
    expect(await again.send({ type: 'device-listen', role: 'bench', path: scale.path })).toMatchObject({
      code: 'port-in-use',
    });
    await zeroOnceStill(again);
    await again.until((s) => s.platform.live === 0 && s.platform.verdict === 'empty', 'the zero');
    expect(await again.send({ type: 'device-remove', role: 'platform' })).toMatchObject({ ok: true });
    await again.until((s) => s.platform.link === 'absent' && s.platform.live === null, 'the scale gone');
    expect(JSON.parse(readFileSync(join(data, 'kiosk.json'), 'utf8'))).toEqual({
      people: ['Wren'],
      devices: {},
    });
  },
  90_000,
);

test('devices set by the environment are not set up at the screen, and the file stays as it is', async () => {
  const data = dataFolder();
  const kiosk = await start({ BYRESIDE_DATA: data, BYRESIDE_PLATFORM: '/dev/none,sma' });
  expect((await kiosk.state()).shed.setup).toEqual({ step: 'closed', why: 'set-by-environment' });
  expect(await kiosk.send({ type: 'device-listen', role: 'platform', path: '/dev/none' })).toMatchObject({
    code: 'set-by-environment',
  });
  expect(await kiosk.send({ type: 'device-remove', role: 'platform' })).toMatchObject({
    code: 'set-by-environment',
  });
  expect(readFileSync(join(data, 'kiosk.json'), 'utf8')).toBe('{"people": ["Wren"]}');
});

test('the demo has no devices to set up', async () => {
  const data = mkdtempSync(join(tmpdir(), 'process-'));
  const kiosk = await start({ BYRESIDE_DATA: data });
  expect(await kiosk.send({ type: 'ports-look' })).toMatchObject({ code: 'not-in-demo' });
  expect(existsSync(join(data, 'kiosk.json'))).toBe(false);
});
