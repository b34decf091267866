import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readEnvironment } from '../../../server/config/environment.ts';
import { loadSetup } from '../../../server/config/load.ts';

function folderWith(files: Record<string, string> = {}): string {
  const folder = mkdtempSync(join(tmpdir(), 'config-'));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

function setupOf(files: Record<string, string>, env: NodeJS.ProcessEnv = {}, demo = false) {
  return loadSetup(readEnvironment({ BYRESIDE_DATA: folderWith(files), ...env }, '/'), demo);
}

test('a folder that was never configured runs the demo', () => {
  expect(setupOf({}).kind).toBe('demo');
});

test('a folder with a database of real work never runs the demo by itself', () => {
  expect(setupOf({ 'byreside.sqlite': '' })).toMatchObject({ kind: 'real', config: { devices: {} } });
});

test('the demo can be asked for beside real work', () => {
  expect(setupOf({ 'kiosk.json': '{}', 'byreside.sqlite': '' }, {}, true).kind).toBe('demo');
});

test('a device in the environment is real work, and the devices it does not name are absent', () => {
  const setup = setupOf(
    { 'kiosk.json': '{"devices":{"bench":{"path":"/dev/b","profile":"sma"}}}' },
    { BYRESIDE_PLATFORM: '/dev/p,sma,4800' },
  );
  expect(setup).toMatchObject({ kind: 'real' });
  expect(setup.config.devices).toEqual({ platform: { path: '/dev/p', profile: 'sma', baud: 4800 } });
});

test('a device given by path alone gets the format and speed that are usual', () => {
  const { config } = setupOf({}, { BYRESIDE_PLATFORM: '/dev/p', BYRESIDE_WAND: '/dev/w' });
  expect(config.devices.platform).toMatchObject({ profile: 'st-gs', baud: 9600 });
  expect(config.devices.wand).toMatchObject({ profile: 'wand-line', baud: 9600 });
});

test.each([
  ['is no JSON', '{ "panel": ', 'config-unreadable', null],
  [
    'names an unknown format',
    '{"devices":{"platform":{"path":"/dev/p","profile":"xyz"}}}',
    'config-invalid',
    'devices.platform.profile',
  ],
  [
    'has a speed as text',
    '{"devices":{"bench":{"path":"/dev/b","profile":"sma","baud":"9600"}}}',
    'config-invalid',
    'devices.bench.baud',
  ],
  [
    'has a relative path',
    '{"devices":{"bench":{"path":"b","profile":"sma"}}}',
    'config-invalid',
    'devices.bench.path',
  ],
  ['has a word nobody knows', '{"colour":"red"}', 'config-invalid', null],
  ['is a list', '[]', 'config-invalid', null],
  [
    'gives two roles one device',
    '{"devices":{"platform":{"path":"/dev/a","profile":"sma"},"bench":{"path":"/dev/a","profile":"sma"}}}',
    'config-invalid',
    'devices.bench.path',
  ],
])(
  'a file that %s gives a problem with file, field and remedy, no device and no demo',
  (_what, text, code, field) => {
    const setup = setupOf({ 'kiosk.json': text });
    expect(setup).toMatchObject({ kind: 'problem', problem: { code, field } });
    expect(setup.config.devices).toEqual({});
    if (setup.kind === 'problem') {
      expect(setup.problem.file).toMatch(/kiosk\.json$/);
      expect(setup.problem.remedy.length).toBeGreaterThan(20);
    }
  },
);

test('an unknown format in the environment is a problem too', () => {
  expect(setupOf({}, { BYRESIDE_BENCH: '/dev/b,nonsense' })).toMatchObject({
    kind: 'problem',
    problem: { field: 'devices.bench.profile' },
  });
});

test.each(['abc', '70000', '-1', '1.5'])('the port %s is refused by name', (port) => {
  expect(() => readEnvironment({ BYRESIDE_PORT: port }, '/')).toThrow(/BYRESIDE_PORT/);
});

test('the environment left alone means port 4180 on loopback and ./data', () => {
  expect(readEnvironment({}, '/farm')).toEqual({
    port: 4180,
    networkPort: null,
    host: '127.0.0.1',
    dataFolder: '/farm/data',
    microphone: null,
    devices: {},
  });
});

test('the board has the microphone that the environment names', () => {
  expect(readEnvironment({ BYRESIDE_MICROPHONE: 'plughw:1,0' }, '/farm').microphone).toBe('plughw:1,0');
  expect(readEnvironment({ BYRESIDE_MICROPHONE: '' }, '/farm').microphone).toBeNull();
});
