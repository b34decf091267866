import { once } from 'node:events';
import { existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { grams } from '../../core/quantity/mass.ts';
import { systemTimers } from '../../hardware/serial/timers.ts';
import { createSimulatedBarn } from '../../hardware/simulator/barn.ts';
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

test.runIf(has('socat'))(
  'with scales and wand on real ports a keeper sets the kiosk up by intents alone, mixes, weighs and gives',
  async () => {
    const folder = mkdtempSync(join(tmpdir(), 'process-'));
    const scales = await createSimulatedBarn({
      timers: systemTimers(),
      seed: 7,
      folder: join(folder, 'tty'),
    });
    cleanUps.push(() => scales.stop());
    const data = join(folder, 'data');
    const kiosk = await start({
      BYRESIDE_DATA: data,
      BYRESIDE_PLATFORM: `${scales.paths.platform},st-gs,9600`,
      BYRESIDE_BENCH: `${scales.paths.bench},sma`,
      BYRESIDE_WAND: scales.paths.wand,
    });
    const fresh = await kiosk.until(
      (s) => [s.platform.link, s.bench.link, s.wand.link].every((link) => link === 'ready'),
      'all links ready',
    );
    expect(fresh).toMatchObject({ demo: false, animals: [], jugs: [] });
    expect(existsSync(join(data, 'demo.sqlite'))).toBe(false);

    await kiosk.send({
      type: 'enrol',
      name: '7',
      species: 'sheep',
      class: 'female',
      tag: '998000000000707',
      inMilk: false,
    });
    await kiosk.send({ type: 'set-syringes', syringeIds: ['syringe-12-by-0.2'] });

    await kiosk.send({ type: 'mix-start', packetId: 'levamisole-52g' });
    await kiosk.send({ type: 'mix-water', celsius: 20 });
    scales.bench.placeJug(grams(250));
    await kiosk.until((s) => s.bench.steady && s.bench.live === 250, 'jug at rest');
    await kiosk.send({ type: 'mix-jug-placed' });
    await kiosk.send({ type: 'mix-jug-is-empty', vesselId: null, deliberate: true });
    scales.bench.pour(grams(600), grams(930));
    await kiosk.until((s) => s.bench.steady && s.bench.live === 1180, 'water at rest');
    await kiosk.send({ type: 'mix-poured' });
    scales.bench.addPowder(grams(52));
    await kiosk.until((s) => s.jug.step === 'dissolve', 'powder seen');
    await kiosk.send({ type: 'mix-dissolved' });
    await kiosk.send({ type: 'mix-in-service' });
    const { jugs } = await kiosk.state();
    // 930 g shown at 20 degC are 932.66 mL of water (Z 1.002852 mL/g, facts on water); with 41.6 mL of powder 974.26 mL.
    expect(jugs[0]?.strengthMgPerMl).toBeCloseTo(46_800 / 974.26, 2);

    await kiosk.send({ type: 'take-jug', jugId: jugs[0]?.id });
    await kiosk.send({ type: 'prove-jug', jugId: jugs[0]?.id, deliberate: true });
    scales.wand.presentTag('998000000000707');
    await kiosk.until((s) => s.round.step === 'visit' && s.round.animal !== null, 'tag read');
    scales.platform.leadOn({ mass: grams(60_000), grade: 'calm' });
    const stopped = await kiosk.until((s) => s.round.step === 'cautions', 'the unapproved rule');
    expect(stopped).toMatchObject({
      offer: null,
      round: {
        cautions: [
          { code: 'not-approved', strength: 'stop' },
          { code: 'scale-unchecked', strength: 'note' },
        ],
      },
    });

    await kiosk.send({
      type: 'approve',
      regimenId: 'levamisole-sheep',
      direction: 'label',
      meatHours: null,
      milkHours: null,
    });
    const { offer } = await kiosk.until((s) => s.offer !== null, 'the offer');
    // 60 kg at 8 mg/kg over 48.04 mg/mL is 9.99 mL: the mark at 10 mL of a syringe marked in 0.2 mL.
    expect(offer).toMatchObject({ volumeMl: 10, draws: 1, marksMl: [10] });
    expect((await kiosk.send({ type: 'give', offerId: offer?.id, outcome: 'whole' })).ok).toBe(true);
    expect(await kiosk.treatments()).toHaveLength(1);
  },
  60_000,
);

test('a configuration that cannot be read opens no device, offers no dose and is no demo', async () => {
  const data = mkdtempSync(join(tmpdir(), 'process-'));
  writeFileSync(
    join(data, 'kiosk.json'),
    '{"devices": {"platform": {"path": "/dev/null", "profile": "unheard-of"}}}',
  );
  const kiosk = await start({ BYRESIDE_DATA: data });
  expect(await kiosk.state()).toMatchObject({
    demo: false,
    problem: { code: 'config-invalid', field: 'devices.platform.profile', file: join(data, 'kiosk.json') },
    platform: { link: 'absent', live: null },
    bench: { link: 'absent' },
    wand: { link: 'absent' },
    offer: null,
    animals: [],
  });
  expect(await kiosk.send({ type: 'mix-start', packetId: 'levamisole-52g' })).toMatchObject({
    code: 'not-configured',
  });
  expect(existsSync(join(data, 'demo.sqlite')) || existsSync(join(data, 'byreside.sqlite'))).toBe(false);
});

test('the server ends by the signal that asked for it', async () => {
  const data = mkdtempSync(join(tmpdir(), 'process-'));
  const { child } = await start({ BYRESIDE_DATA: data });
  const ended = once(child, 'exit');
  child.kill('SIGTERM');
  expect(await ended).toEqual([null, 'SIGTERM']);
});

test('leaving the demo starts the kiosk anew on real devices, under the same address, with a database of its own', async () => {
  const data = mkdtempSync(join(tmpdir(), 'process-'));
  const kiosk = await start({ BYRESIDE_DATA: data, BYRESIDE_PORT: '4391' });
  const demo = await kiosk.state();
  expect(demo.demo).toBe(true);
  expect((await kiosk.send({ type: 'leave-demo' })).ok).toBe(true);
  await expect
    .poll(() => kiosk.state().catch(() => demo), { timeout: 10_000 })
    .toMatchObject({ demo: false });
  const real = await kiosk.state();
  expect(real.bootId).not.toBe(demo.bootId);
  expect(real.animals).toEqual([]);
  expect(existsSync(join(data, 'byreside.sqlite'))).toBe(true);
  expect(await kiosk.send({ type: 'leave-demo' })).toMatchObject({ code: 'demo-only' });
});
