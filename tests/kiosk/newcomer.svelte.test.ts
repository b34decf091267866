import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type MountedApp, mountApp } from './mount-app.ts';
import { SCENES } from './preview/scenes.ts';

let app: MountedApp;

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
  await app.close();
  vi.useRealTimers();
});

test('an animal seen to that still stands there is to be led off, and nobody asks loudly who it is', () => {
  const page = open('visit-done');
  expect(page.text('weighing')).toContain('Done. Lead it off.');
  expect(page.get('who').className).not.toContain('main');
});

test.each(['jug-powder-lifted', 'jug-powder-changed', 'jug-pour-lifted'])(
  '%s shows no figure of a jug that is not there',
  (name) => {
    open(name);
    expect(document.querySelector('main')?.textContent).not.toMatch(/[-−]\d|to go|mg\/mL/);
  },
);

test.each(['jug-powder-changed', 'jug-powder-too-much'])('in %s stopping is the way on', (name) => {
  expect(open(name).get('mix-cancel').className).toContain('main');
});

test('the doses of the day are those that were given', () => {
  expect(open('home-corrected').text('door-daybook')).toContain('3 today');
});

test('an animal that is not the one offered can be named from the offer', () => {
  const page = open('offered');
  page.click('not-this-animal');
  page.click('animal-tile');
  expect(page.socket.intents).toMatchObject([{ type: 'pick-animal' }]);
  expect(page.socket.intents[0]).not.toMatchObject({ animalId: 'a1' });
});

test('a jug put in service leads on to the platform', () => {
  const page = open('jug-label');
  page.click('mix-next');
  page.patch({ jug: { step: 'idle' } });
  expect(page.text('to-platform')).toBe('Weigh and dose');
});

test('a jug that was a mistake is a tap away from where it is poured away', () => {
  const page = open('jug-label');
  page.click('mix-next');
  const jug = SCENES.find(({ name }) => name === 'jug-label')?.state.jug;
  const [other] = SCENES.find(({ name }) => name === 'home')?.state.jugs ?? [];
  if (jug?.step !== 'label' || other === undefined) throw new Error('the scenes have no jug');
  page.patch({ jug: { step: 'idle' }, jugs: [{ ...other, id: jug.jug.id }] });
  page.click('jug-not-right');
  expect(page.find('jug-discard')).not.toBeNull();
});

test('an animal added is named once it is in the herd', () => {
  const page = open('enrol-tag');
  page.click('enrol-without-tag');
  expect(page.find('choose-enrol-done')).toBeNull();
  const scene = SCENES.find(({ name }) => name === 'enrol-tag');
  const [first] = scene?.state.animals ?? [];
  if (first === undefined) throw new Error('no herd');
  page.patch({ animals: [{ ...first, id: 'a42', name: '42' }] });
  expect(document.querySelector('main')?.textContent).toContain('42 added');
});

test('a stepper steps on while the finger stays, and no further once it lifts', () => {
  const page = open('undo-volume');
  const before = Number.parseFloat(page.text('volume'));
  page.press('volume-less', 'pointerdown');
  vi.advanceTimersByTime(500 + 4 * 120);
  page.press('volume-less', 'pointerup');
  page.click('volume-less');
  vi.advanceTimersByTime(1000);
  expect(before - Number.parseFloat(page.text('volume'))).toBeCloseTo(0.5, 9);
});
