import { mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { type Bench, createBench } from '../make/setup-rig.ts';

let bench: Bench;
beforeEach(() => {
  bench = createBench();
});

const at = (path: string, profile = 'st-gs') => ({ path, profile, baud: 9600 });

test('a role replaced lets its port go first, is blanked, and then reads the new device only', async () => {
  const old = await bench.scale('/dev/old', 'st-gs');
  const next = await bench.scale('/dev/new', 'sma');
  const rig = bench.rig({ platform: at('/dev/old') });
  old.load = 7000;
  next.load = 9000;
  await bench.timers.advance(2000);
  expect(rig.told.at(-1)).toBe('platform 7000');
  const from = rig.told.length;
  const replaced = rig.devices.replace('platform', at('/dev/new', 'sma'));
  await bench.timers.advance(2000);
  expect(await replaced).toBe(true);
  expect(rig.told[from]).toBe('platform blank');
  expect(rig.told.slice(from)).not.toContain('platform 7000');
  expect(rig.told.at(-1)).toBe('platform 9000');
  expect(rig.devices.views()[0]).toMatchObject({ link: 'ready', path: '/dev/new', profile: 'sma' });
  await rig.stop();
});

test('a role can be put on its own port again in another format', async () => {
  const scale = await bench.scale('/dev/one', 'sma');
  const rig = bench.rig({ bench: at('/dev/one') });
  scale.load = 500;
  await bench.timers.advance(2000);
  expect(rig.devices.linkOf('bench')).toBe('settling');
  const replaced = rig.devices.replace('bench', at('/dev/one', 'sma'));
  await bench.timers.advance(2000);
  expect(await replaced).toBe(true);
  expect(rig.devices.linkOf('bench')).toBe('ready');
  await rig.stop();
});

test('a role replaced by none is absent and its port is free', async () => {
  await bench.scale('/dev/one', 'st-gs');
  const rig = bench.rig({ platform: at('/dev/one') });
  await bench.timers.advance(2000);
  await rig.devices.replace('platform', undefined);
  expect(rig.devices.linkOf('platform')).toBe('absent');
  expect(rig.devices.holderOf('/dev/one')).toBeNull();
  await rig.stop();
});

/** One device under two names. */
function twoNames(): { device: string; name: string } {
  const folder = mkdtempSync(join(tmpdir(), 'devices-'));
  const device = join(folder, 'tty');
  const name = join(folder, 'by-id');
  writeFileSync(device, '');
  symlinkSync(device, name);
  return { device, name };
}

test('two roles never come onto one device, whatever it is called', async () => {
  const { device, name } = twoNames();
  await bench.scale(device, 'st-gs');
  await bench.scale(name, 'st-gs');
  const rig = bench.rig({ platform: at(device) });
  await bench.timers.advance(2000);
  expect(await rig.devices.replace('bench', at(name))).toBe(false);
  expect(rig.devices.holderOf(name)).toBe('platform');
  expect(rig.devices.linkOf('bench')).toBe('absent');
  expect(rig.devices.linkOf('platform')).toBe('ready');
  await rig.stop();
});

test('configured so from the start, the second role stays without a link and says why', async () => {
  const { device, name } = twoNames();
  await bench.scale(device, 'st-gs');
  const rig = bench.rig({ platform: at(device), bench: at(name) });
  await bench.timers.advance(2000);
  expect(rig.devices.views()).toMatchObject([
    { role: 'platform', link: 'ready', trouble: null },
    { role: 'bench', link: 'absent', trouble: expect.stringContaining('same port') },
    { role: 'wand' },
  ]);
  await rig.stop();
});

test('zero is sent once, only while ready, and only in a format that has a word for it', async () => {
  const scale = await bench.scale('/dev/one', 'sma');
  await bench.scale('/dev/two', 'st-gs');
  const rig = bench.rig({ platform: at('/dev/one', 'sma'), bench: at('/dev/two') });
  scale.load = 400;
  expect(rig.devices.zero('platform')).toBe('not-ready');
  await bench.timers.advance(2000);
  // What could not be sent was not kept for later.
  expect(rig.told.at(-1)).not.toBe('platform 0');
  expect(rig.devices.zero('bench')).toBe('no-command');
  expect(rig.devices.zero('platform')).toBe('sent');
  await bench.timers.advance(500);
  expect(rig.told.filter((word) => word.startsWith('platform')).at(-1)).toBe('platform 0');
  expect(rig.devices.views().map(({ zeroable }) => zeroable)).toEqual([true, false, false]);
  await rig.stop();
});

test('what is asked for after the stop changes nothing', async () => {
  await bench.scale('/dev/one', 'st-gs');
  const rig = bench.rig();
  await rig.devices.stop();
  expect(await rig.devices.replace('bench', at('/dev/one'))).toBe(false);
  expect(rig.devices.linkOf('bench')).toBe('absent');
});
