import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Intent } from '../../shared/intent.ts';
import { type MountedApp, mountApp } from './mount-app.ts';
import { SCENES } from './preview/scenes.ts';
import { onTrial, settingUp } from './preview/setup-scenes.ts';

let app: MountedApp | undefined;

function open(name: string): MountedApp {
  const scene = SCENES.find((candidate) => candidate.name === name);
  if (scene === undefined) throw new Error(`no scene is called ${name}`);
  app = mountApp(scene.state, scene.place);
  for (const tap of scene.taps ?? []) if (!tap.startsWith('hold:')) app.click(tap);
  return app;
}

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(async () => {
  await app?.close();
  app = undefined;
  vi.useRealTimers();
});

const PATH = '/dev/serial/by-id/usb-Example_Serial_Adapter_A50285BI-if00-port0';

test.each([
  ['device-home', 'device-find', { type: 'ports-look' }],
  ['device-home', 'zero', { type: 'zero', role: 'platform' }],
  ['device-home-unchecked', 'device-find', { type: 'ports-look' }],
  ['device-ports', 'port-tile', { type: 'device-listen', role: 'platform', path: PATH }],
  ['device-listening', 'setup-drop', { type: 'device-drop' }],
  ['device-failed', 'setup-again', { type: 'device-listen', role: 'platform', path: PATH }],
  ['device-nothing', 'setup-port', { type: 'ports-look' }],
  ['device-proposals', 'proposal-tile', { type: 'device-try', role: 'platform', index: 0 }],
  ['device-loads', 'load-kg-20', { type: 'device-prove', loadId: 'kg-20' }],
  ['device-pounds', 'trial-instead', { type: 'device-try', role: 'platform', index: 3 }],
  ['device-steps-seen', 'steps-5', { type: 'device-division', lastDigits: 5 }],
  ['device-strange', 'setup-lines-open', { type: 'device-lines' }],
  ['device-proposals-lines', 'setup-lines-open', { type: 'device-lines' }],
  ['device-lines-found', 'setup-patterns', { type: 'device-patterns' }],
  ['device-patterns', 'proposal-tile', { type: 'device-try', role: 'platform', index: 0 }],
  ['device-right', 'device-keep', { type: 'device-keep' }],
  ['device-wand-read', 'device-keep', { type: 'device-keep' }],
  ['device-zero-platform', 'zero', { type: 'zero', role: 'platform' }],
])('in %s a tap on %s asks for one thing', (scene, testid, wish) => {
  const page = open(scene);
  page.click(testid);
  expect(page.socket.intents).toEqual([{ ...wish, id: expect.any(String) }]);
  expect(Intent.safeParse(page.socket.intents[0])).toMatchObject({ success: true });
});

test.each([
  ['device-home', 'device-remove', { type: 'device-remove', role: 'platform' }],
  ['device-trial', 'device-keep-unproved', { type: 'device-keep' }],
  ['device-no-tare', 'device-no-tare', { type: 'device-no-tare' }],
  ['device-list-demo', 'use-real', { type: 'leave-demo' }],
])('in %s only a held press on %s counts', (scene, testid, wish) => {
  const page = open(scene);
  page.click(testid);
  expect(page.socket.intents).toEqual([]);
  page.press(testid, 'pointerdown');
  vi.advanceTimersByTime(600);
  expect(page.socket.intents).toEqual([{ ...wish, id: expect.any(String) }]);
});

test('a device is opened from the list, and going back ends its set-up', () => {
  const page = open('device-list');
  page.click('device-platform');
  expect(page.get('device-home').dataset['role']).toBe('platform');
  page.patch({ shed: settingUp({ step: 'ports', ports: [] }).shed });
  expect(page.find('setup-ports')).not.toBeNull();
  page.click('back');
  expect(page.find('devices')).not.toBeNull();
  expect(page.socket.intents).toMatchObject([{ type: 'device-drop' }]);
});

test('a scale that was never checked leads on to its check', async () => {
  const page = open('device-home-unchecked');
  expect(page.get('device-find').className).not.toContain('main');
  page.click('device-check');
  expect(page.find('check-scale')).not.toBeNull();
  await page.close();
  expect(open('device-home').find('device-check')).toBeNull();
});

test('going back from a device nobody sets up asks for nothing', () => {
  const page = open('device-home');
  page.click('back');
  expect(page.socket.intents).toEqual([]);
});

test('the set-up of another role is not shown here, nor ended from here', () => {
  const page = mountApp(settingUp(onTrial({ role: 'bench' })), 'shed/devices/platform');
  app = page;
  expect(page.find('setup-trial')).toBeNull();
  expect(page.find('device-home')).not.toBeNull();
  page.click('back');
  expect(page.socket.intents).toEqual([]);
});

test('a value on trial is blanked with its link, and stands in the scale’s own unit', () => {
  const page = open('device-trial-lb');
  expect(page.text('trial-live')).toBe('150.1 lb');
  page.patch({ shed: settingUp(onTrial({ link: 'lost', live: null, division: null })).shed });
  expect(page.text('trial-live')).toBe('–');
  expect(page.get('trial-prove')).toHaveProperty('disabled', true);
});

test.each(['device-list-demo', 'device-list-fixed'])('in %s no device can be opened', (scene) => {
  const page = open(scene);
  expect(page.find('device-platform')).toBeNull();
  expect(page.find('setup-closed')).not.toBeNull();
});

test('the zero plate is there only where the kiosk can zero a platform that needs it', () => {
  const page = open('device-zero-platform');
  const scene = SCENES.find(({ name }) => name === 'device-zero-platform');
  if (scene === undefined) throw new Error('no such scene');
  page.patch({ platform: { ...scene.state.platform, verdict: 'empty', live: 0 } });
  expect(page.find('zero')).toBeNull();
  page.patch({ platform: scene.state.platform });
  expect(page.find('zero')).not.toBeNull();
  const devices = scene.state.shed.devices.map((device) => ({ ...device, zeroable: false }));
  page.patch({ shed: { ...scene.state.shed, devices } });
  expect(page.find('zero')).toBeNull();
});
