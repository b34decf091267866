import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import type { KioskState } from '../../shared/state.ts';
import { type KioskProcess, startKiosk } from './kiosk-process.ts';

const data = mkdtempSync(join(tmpdir(), 'practice-'));
let kiosk: KioskProcess | null = null;

afterEach(() => {
  kiosk?.child.kill('SIGKILL');
  rmSync(data, { recursive: true, force: true });
});

/** Waits until the kiosk is up again, and so. */
function again(server: KioskProcess, condition: (state: KioskState) => boolean): Promise<void> {
  return expect
    .poll(() => server.state().then(condition, () => false), { timeout: 20_000, interval: 100 })
    .toBe(true);
}

test('a round is practised and ended, and the farm’s records are as they were', async () => {
  const config = '{"people": ["Wren"], "weightUnit": "kg", "face": "glare"}';
  writeFileSync(join(data, 'kiosk.json'), config);
  const server = await startKiosk({ BYRESIDE_DATA: data, BYRESIDE_PORT: '4393' });
  kiosk = server;
  await server.send({ type: 'safety-read' });
  await server.send({ type: 'first-start', step: 'language', move: 'end' });
  expect(await server.send({ type: 'practice-end' })).toMatchObject({ code: 'wrong-state' });
  const before = await server.state();
  expect(before).toMatchObject({ demo: false, practice: false, animals: [] });

  expect(await server.send({ type: 'practice-begin' })).toMatchObject({ ok: true });
  await again(server, ({ practice }) => practice);
  const practised = await server.until(({ platform }) => platform.link === 'ready', 'the simulated platform');
  expect(practised).toMatchObject({
    demo: true,
    safetyRead: true,
    face: 'glare',
    weightUnit: 'kg',
    firstStart: null,
  });
  expect(practised.shed.person).toBe('Wren');
  expect(await server.send({ type: 'leave-demo' })).toMatchObject({ code: 'demo-only' });
  const jugId = practised.jugs[0]?.id;
  await server.send({ type: 'take-jug', jugId });
  await server.send({ type: 'prove-jug', jugId, deliberate: true });
  // Nobody leads an animal on from here: it comes by itself.
  const stood = await server.until(
    ({ offer, round }) => offer !== null || round.step === 'cautions',
    'an animal led on and weighed',
  );
  for (const { code, strength } of stood.round.step === 'cautions' ? stood.round.cautions : [])
    if (strength === 'ask') await server.send({ type: 'accept', code });
  const { offer } = await server.until((state) => state.offer !== null, 'the dose');
  expect((await server.send({ type: 'give', offerId: offer?.id, outcome: 'whole' })).ok).toBe(true);
  await server.until(({ platform }) => platform.verdict === 'empty', 'the animal led off');
  expect(await server.treatments()).toHaveLength(1);

  expect(await server.send({ type: 'practice-end' })).toMatchObject({ ok: true });
  await again(server, ({ practice }) => !practice);
  const after = await server.state();
  expect(after).toMatchObject({ demo: false, animals: [], jugs: [], dayBook: [] });
  expect(after.bootId).not.toBe(before.bootId);
  expect(await server.treatments()).toEqual([]);
  expect(readFileSync(join(data, 'kiosk.json'), 'utf8')).toBe(config);
  expect(existsSync(join(data, 'demo.sqlite'))).toBe(false);
}, 60_000);
