import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import type { Reading } from '../../../core/weighing/reading.ts';
import { scaleProfile } from '../../../hardware/scale/profiles.ts';
import { scaleDriver } from '../../../hardware/scale/scale-driver.ts';
import { createLink } from '../../../hardware/serial/link.ts';
import type { LinkDriver } from '../../../hardware/serial/link-driver.ts';
import { systemTimers } from '../../../hardware/serial/timers.ts';
import { createSimulatedBarn, type SimulatedBarn } from '../../../hardware/simulator/barn.ts';
import { type WandRead, wandDriver } from '../../../hardware/wand/wand-driver.ts';
import { socatPresent } from '../socat-present.ts';

const timers = systemTimers();
const MEDIA = [
  { medium: 'memory', name: 'in memory', skip: false },
  {
    medium: 'pseudo-terminal',
    name: socatPresent ? 'on pseudo-terminals' : 'on pseudo-terminals (left out: socat is not installed)',
    skip: !socatPresent,
  },
] as const;

describe.for(MEDIA)('a simulated barn $name', { timeout: 20_000 }, ({ medium, skip }) => {
  let folder: string;
  let barn: SimulatedBarn;
  const stops: (() => Promise<void>)[] = [];
  beforeEach(async (context) => {
    if (skip) context.skip();
    folder = await mkdtemp(join(tmpdir(), 'byreside-barn-'));
    const options = { timers, seed: 1, folder: join(folder, 'ports') };
    barn = await createSimulatedBarn(medium === 'memory' ? { ...options, medium } : options);
  });
  afterEach(async () => {
    if (skip) return;
    await Promise.all(stops.splice(0).map((stop) => stop()));
    await barn.stop();
    await rm(folder, { recursive: true, force: true });
  });

  function listen<Item>(path: string, driver: LinkDriver<Item>, onItem: (item: Item) => void) {
    const link = createLink({
      path,
      baud: 9600,
      driver,
      timers,
      openPort: barn.openPort,
      random: () => 0.5,
      onState: () => {},
      onItem,
    });
    stops.push(() => link.stop());
    return link;
  }
  function scale(role: 'platform' | 'bench') {
    const profile = scaleProfile(barn.profiles[role]);
    if (profile === undefined) throw new Error(barn.profiles[role]);
    const latest: { reading: Reading | null } = { reading: null };
    const link = listen(barn.paths[role], scaleDriver(profile, role, timers.now), (reading) => {
      latest.reading = reading;
    });
    return { latest, link };
  }
  const within = { timeout: 6000, interval: 20 };

  it('is read like any hardware: platform, bench and wand', async () => {
    expect(barn.medium).toBe(medium);
    const platform = scale('platform');
    const bench = scale('bench');
    const reads: WandRead[] = [];
    const wand = listen(barn.paths.wand, wandDriver(timers.now), (read) => reads.push(read));
    await expect.poll(() => wand.state.status, within).toBe('ready');
    barn.platform.leadOn({ mass: kilograms(32), grade: 'calm' });
    barn.bench.placeJug(grams(943));
    barn.wand.presentTag('982000001088420');
    await expect
      .poll(() => Math.abs((platform.latest.reading?.mass.value ?? 0) - 32_000), within)
      .toBeLessThan(700);
    await expect
      .poll(() => bench.latest.reading, within)
      .toMatchObject({ mass: grams(943), stability: 'stable' });
    expect(bench.latest.reading).toMatchObject({ role: 'bench', division: grams(1) });
    expect(reads).toMatchObject([{ kind: 'tag', tag: '982000001088420' }]);
  });

  it('loses one device when its cable is pulled, and none beside it', async () => {
    const platform = scale('platform');
    const bench = scale('bench');
    await expect
      .poll(() => [platform.link.state.status, bench.link.state.status], within)
      .toEqual(['ready', 'ready']);
    await barn.cables.platform.pull();
    await expect.poll(() => platform.link.state.status, within).toBe('lost');
    expect(bench.link.state.status).toBe('ready');
    await barn.cables.platform.plug();
    await expect.poll(() => platform.link.state.status, within).toBe('ready');
    expect(bench.link.counters).toMatchObject({ opens: 1, losses: 0 });
  });

  it('opens no other path', async () => {
    await expect(barn.openPort('/dev/ttyS0', 9600)).rejects.toMatchObject({ code: 'not-found' });
  });

  it('leaves no names behind when stopped', async () => {
    const names = Object.values(barn.paths);
    expect(names.map((name) => existsSync(name))).toEqual(names.map(() => medium === 'pseudo-terminal'));
    await barn.stop();
    expect(names.some((name) => existsSync(name))).toBe(false);
  });
});
