import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { ScaleRole } from '../../../core/weighing/reading.ts';
import { createSimulatedBarn, type SimulatedBarn } from '../../../hardware/simulator/barn.ts';
import { seededRandom } from '../../../hardware/simulator/random.ts';
import { createTray } from '../../../server/demo/tray.ts';
import { createDevices, type Devices } from '../../../server/devices/devices.ts';
import type { TrayAction } from '../../../shared/tray.ts';
import { ManualTimers } from '../../hardware/manual-timers.ts';
import { type TestBarn, testBarn } from '../make/test-barn.ts';

let timers: ManualTimers;
let sim: SimulatedBarn;
let devices: Devices;
let barn: TestBarn;

beforeEach(async () => {
  timers = new ManualTimers();
  const folder = mkdtempSync(join(tmpdir(), 'walk-checks-'));
  sim = await createSimulatedBarn({ timers, seed: 7, folder, medium: 'memory' });
  const { paths, profiles } = sim;
  const scale = (role: ScaleRole) => ({ path: paths[role], profile: profiles[role], baud: 9600 });
  barn = testBarn(':memory:', undefined, { tray: createTray(sim, seededRandom(3)) });
  devices = createDevices({
    config: { platform: { ...scale('platform'), divisionGrams: 50 }, bench: scale('bench') },
    openPort: sim.openPort,
    timers,
    random: () => 0.5,
    listener: {
      reading: barn.barn.read,
      wandRead: barn.barn.wandRead,
      link: barn.barn.linkChanged,
    },
  });
  await wait(2000);
});

afterEach(async () => {
  await devices.stop();
  await sim.stop();
});

async function wait(ms: number): Promise<void> {
  await timers.advance(ms);
  barn.clock.pass(ms);
}

/** Moves the simulated scales and lets them rest. */
async function tray(action: TrayAction): Promise<void> {
  expect(barn.send({ type: 'tray', action }).ok).toBe(true);
  await wait(3000);
}

async function walkScale(role: ScaleRole, weights: readonly [string, string]) {
  expect(barn.send({ type: 'check-start', role }).ok).toBe(true);
  const seen: string[] = [];
  for (;;) {
    const { step } = barn.barn.context.memory.check;
    seen.push(step);
    if (step === 'result' || seen.length > 30) return seen;
    if (step === 'weight') barn.send({ type: 'check-weight', weightId: weights[0] });
    else if (step === 'second') barn.send({ type: 'check-weight', weightId: weights[1] });
    else {
      await tray({ do: 'as-asked' });
      expect(barn.send({ type: 'check-next' })).toMatchObject({ ok: true });
    }
  }
}

test.each<[ScaleRole, [string, string]]>([
  ['platform', ['kg-20', 'kg-10']],
  ['bench', ['g-500', 'g-200']],
  ['platform', ['water-1', 'kg-5']],
])('in the demo a check of the %s with %s is walked to its end', async (role, weights) => {
  const seen = await walkScale(role, weights);
  expect(seen.at(-1)).toBe('result');
  expect(seen).toContain('down');
  expect(barn.barn.context.memory.scaleChecks[role]).toMatchObject({ role, verdict: 'passed' });
  // Without a check under way the hand takes off what it left.
  barn.send({ type: 'check-next' });
  await tray({ do: 'as-asked' });
  const { deck, bench } = barn.barn.context.memory;
  expect(role === 'platform' ? deck.live?.value : bench.live?.value).toBe(0);
});

test('a check of a syringe needs the demo’s fine scale, and is walked to its end on it', async () => {
  const start = {
    type: 'syringe-check-start',
    syringeId: 'syringe-6-by-0.1',
    markMl: 3,
    celsius: 20,
  } as const;
  expect(barn.send(start)).toMatchObject({ code: 'too-coarse-for-syringe' });
  await tray({ do: 'swap-bench', fine: true });
  expect(barn.send(start).ok).toBe(true);
  // A cup, then ten deliveries.
  for (let times = 0; times < 11; times += 1) {
    await tray({ do: 'as-asked' });
    expect(barn.send({ type: 'syringe-check-next' })).toMatchObject({ ok: true });
  }
  const [record] = barn.barn.context.memory.syringeChecks;
  expect(record).toMatchObject({ syringeId: 'syringe-6-by-0.1', division: { value: 0.01 } });
  expect(record?.findings.verdict).toBe('within');
  barn.send({ type: 'syringe-check-next' });
  await tray({ do: 'as-asked' });
  await tray({ do: 'swap-bench', fine: false });
  expect(barn.barn.context.memory.bench).toMatchObject({ live: { value: 0 }, division: { value: 1 } });
});
