import { afterEach, expect, test } from 'vitest';
import { type MountedApp, mountApp } from './mount-app.ts';
import { FIRST_START_SCENES } from './preview/first-start-scenes.ts';

let app: MountedApp;

function opens(step: string): void {
  const scene = FIRST_START_SCENES.find(({ name }) => name === `first-${step}`);
  if (scene === undefined) throw new Error(`no scene for ${step}`);
  app = mountApp(scene.state);
}

const sent = () => app.socket.intents.map(({ id: _, ...wish }) => wish);

afterEach(() => app.close());

test('an answer is kept and leads on', () => {
  opens('unit');
  app.click('choose-lb');
  expect(sent()).toEqual([
    { type: 'set-weight-unit', unit: 'lb' },
    { type: 'first-start', step: 'unit', move: 'next' },
  ]);
});

test('a step is passed over by one tap, and come back to by another', () => {
  opens('bench');
  app.click('first-next');
  app.patch({ firstStart: 'wand' });
  expect(app.get('first-start').dataset['step']).toBe('wand');
  app.click('first-back');
  expect(sent().filter(({ type }) => type === 'first-start')).toEqual([
    { type: 'first-start', step: 'bench', move: 'next' },
    { type: 'first-start', step: 'wand', move: 'back' },
  ]);
});

test('back first closes what was opened within a step', () => {
  opens('rules');
  app.click('regimen-tile');
  expect(app.find('regimens')).toBeNull();
  app.click('first-back');
  expect(app.find('regimens')).not.toBeNull();
  expect(sent()).toEqual([]);
});

test('a step begins at its beginning, whatever was open in the one before', () => {
  opens('rules');
  app.click('regimen-tile');
  app.patch({ firstStart: 'syringes' });
  expect(app.find('syringe-tile')).not.toBeNull();
});

test('home comes once it is over', () => {
  opens('rules');
  expect(app.find('door-platform')).toBeNull();
  app.patch({ firstStart: null });
  expect(app.find('door-platform')).not.toBeNull();
});

test('the way on is the biggest thing only once the step is answered', () => {
  opens('platform');
  expect(app.get('first-next').classList.contains('main')).toBe(true);
  const shed = FIRST_START_SCENES[0]?.state.shed;
  if (shed === undefined) throw new Error('no scene');
  app.patch({ shed: { ...shed, devices: shed.devices.map((each) => ({ ...each, link: 'absent' })) } });
  expect(app.get('first-next').classList.contains('main')).toBe(false);
});

test('what is tapped at the panel, the clock and the people is sent, and leads on', () => {
  opens('panel');
  app.click('panel-size-less');
  app.click('panel-fits');
  const pxPerMm = (5.25 * Math.min(innerWidth / 800, innerHeight / 480)) / 1.005;
  expect(sent()).toEqual([
    { type: 'set-panel', widthPx: innerWidth, heightPx: innerHeight, pxPerMm: expect.closeTo(pxPerMm, 9) },
    { type: 'first-start', step: 'panel', move: 'next' },
  ]);
  app.patch({ firstStart: 'clock' });
  app.click('other-zone');
  app.click('region-Other');
  app.click('zone-tile');
  expect(sent().at(-1)).toMatchObject({ type: 'set-time-zone' });
  expect(app.find('clock-and-zone')).not.toBeNull();
  app.click('clock-right');
  expect(sent().at(-1)).toEqual({ type: 'first-start', step: 'clock', move: 'next' });
  app.patch({ firstStart: 'people' });
  app.click('person-new');
  for (const letter of ['A', 'D', 'A']) app.click(`letter-${letter}`);
  app.click('letters-done');
  expect(sent().at(-1)).toEqual({ type: 'add-person', name: 'Ada' });
  app.click('person-tile');
  expect(sent().slice(-2)).toEqual([
    { type: 'set-person', name: 'Sam' },
    { type: 'first-start', step: 'people', move: 'next' },
  ]);
});

test('back closes the picking of a zone before it leaves the step', () => {
  opens('clock');
  app.click('other-zone');
  app.click('region-America');
  expect(app.find('stretch-0')).not.toBeNull();
  app.click('first-back');
  expect(app.find('region-America')).not.toBeNull();
  app.click('first-back');
  expect(app.find('clock-and-zone')).not.toBeNull();
  expect(sent()).toEqual([]);
});
