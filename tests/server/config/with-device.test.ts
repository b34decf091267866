import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readEnvironment } from '../../../server/config/environment.ts';
import { KioskConfig } from '../../../server/config/kiosk-config.ts';
import { loadSetup } from '../../../server/config/load.ts';
import { withDevice } from '../../../server/config/with-device.ts';

const BENCH = { path: '/dev/b', profile: 'sma', baud: 9600 };

function folderWith(config: object): string {
  const folder = mkdtempSync(join(tmpdir(), 'with-device-'));
  writeFileSync(join(folder, 'kiosk.json'), JSON.stringify(config));
  return folder;
}

const load = (folder: string) => loadSetup(readEnvironment({ BYRESIDE_DATA: folder }, '/'), false);
const onDisk = (folder: string) => JSON.parse(readFileSync(join(folder, 'kiosk.json'), 'utf8'));

test('a device set up stands in the file beside all that was there, and is read at the next start', () => {
  const folder = folderWith({ people: ['Wren'], devices: { bench: BENCH } });
  const platform = {
    path: '/dev/p',
    profile: 'stx-weight',
    baud: 4800,
    settings: { unit: 'lb', noTare: true },
  } as const;
  const config = withDevice(folder, load(folder).config, 'platform', platform);
  expect(config.devices).toEqual({ bench: BENCH, platform });
  expect(onDisk(folder)).toEqual({ people: ['Wren'], devices: { bench: BENCH, platform } });
  expect(load(folder)).toMatchObject({ kind: 'real', config: { people: ['Wren'], devices: { platform } } });
});

test('a device taken out leaves the others', () => {
  const folder = folderWith({ devices: { bench: BENCH, wand: { path: '/dev/w', profile: 'wand-line' } } });
  expect(withDevice(folder, load(folder).config, 'wand', undefined).devices).toEqual({ bench: BENCH });
  expect(onDisk(folder)).toEqual({ devices: { bench: BENCH } });
});

test.each([
  ['a second role on the same path', { ...BENCH }],
  ['a format that lacks its unit', { path: '/dev/p', profile: 'stx-weight', baud: 9600 }],
])('%s is refused and the file stays whole', (_what, platform) => {
  const folder = folderWith({ devices: { bench: BENCH } });
  expect(() => withDevice(folder, KioskConfig.parse({}), 'platform', platform)).toThrow();
  expect(onDisk(folder)).toEqual({ devices: { bench: BENCH } });
  expect(readdirSync(folder)).toEqual(['kiosk.json']);
});

test.each([
  [{ unit: 'stone' }, 'devices.platform.settings.unit'],
  [{}, 'devices.platform.settings.unit'],
  [{ unit: 'kg', pattern: 'x' }, 'devices.platform.settings.pattern'],
])('the settings %j in the file are named as the field that is wrong', (settings, field) => {
  const folder = folderWith({ devices: { platform: { path: '/dev/p', profile: 'status-words', settings } } });
  expect(load(folder)).toMatchObject({ kind: 'problem', problem: { code: 'config-invalid', field } });
});
