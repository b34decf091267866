import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Intent } from '../../shared/intent.ts';
import { type MountedApp, mountApp } from './mount-app.ts';
import { SCENES } from './preview/scenes.ts';

let app: MountedApp | undefined;

function open(name: string): MountedApp {
  const scene = SCENES.find((candidate) => candidate.name === name);
  if (scene === undefined) throw new Error(`no scene is called ${name}`);
  app = mountApp(scene.state, scene.place);
  for (const tap of scene.taps ?? []) if (!tap.startsWith('hold:')) app.click(tap);
  return app;
}

function holdDown(page: MountedApp, testid: string): void {
  page.press(testid, 'pointerdown');
  vi.advanceTimersByTime(600);
}

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(async () => {
  await app?.close();
  vi.useRealTimers();
});

test.each([
  ['safety', 'safety-read', { type: 'safety-read' }],
  ['home', 'face', { type: 'set-face', face: 'glare' }],
  ['no-jug', 'jug-tile', { type: 'take-jug', jugId: 'j7' }],
  ['prove-jug', 'prove-jug-yes', { type: 'prove-jug', jugId: 'j7', deliberate: false }],
  ['prove-jug', 'other-jug', { type: 'put-jug-down' }],
  ['visit-who', 'animal-tile', { type: 'pick-animal', animalId: 'a1' }],
  ['which-animal', 'animal-tile', { type: 'pick-animal', animalId: 'a1' }],
  ['offered-skip', 'skip-sick', { type: 'skip', reason: 'sick' }],
  ['logged', 'next', { type: 'next' }],
  ['jug-idle', 'packet-tile', { type: 'mix-start', packetId: 'levamisole-52g' }],
  ['jug-water', 'water-tile', { type: 'mix-water', celsius: 5 }],
  ['jug-place', 'mix-next', { type: 'mix-jug-placed' }],
  ['jug-pour-stop', 'mix-next', { type: 'mix-poured', deliberate: false }],
  ['jug-dilution', 'mix-this', { type: 'mix-dilution', perPacketMl: 1892.706, deliberate: false }],
  ['jug-dilution-second', 'mix-this', { type: 'mix-dilution', perPacketMl: 946.353, deliberate: false }],
  ['jug-mode', 'mode-tile', { type: 'mix-mode', mode: 'make-up-to' }],
  ['jug-amount', 'amount-tile', { type: 'mix-amount', amount: { kind: 'packets', count: 1 } }],
  ['jug-new-heavier', 'jug-again', { type: 'mix-jug-placed' }],
  ['jug-powder-weighed', 'powder-in', { type: 'mix-powder-in', deliberate: false }],
  ['prove-jug-fits', 'prove-jug-yes', { type: 'prove-on-bench', jugId: 'j7' }],
  ['jug-dissolve', 'mix-next', { type: 'mix-dissolved' }],
  ['jug-label', 'mix-next', { type: 'mix-in-service' }],
  ['shed-people', 'person-tile', { type: 'set-person', name: 'Sam' }],
  ['shed-screen', 'unit-kg', { type: 'set-weight-unit', unit: 'kg' }],
  ['offered-tray', 'tray-walk-off', { type: 'tray', action: { do: 'walk-off' } }],
  ['offered-tray', 'tray-powder-half', { type: 'tray', action: { do: 'add-powder', packets: 0.5 } }],
  ['offered-tray', 'tray-as-asked', { type: 'tray', action: { do: 'as-asked' } }],
  ['offered-tray', 'tray-swap-bench', { type: 'tray', action: { do: 'swap-bench', fine: true } }],
  ['offered-tray', 'tray-pull-wand', { type: 'tray', action: { do: 'pull-cable', role: 'wand' } }],
  [
    'enrol-tag',
    'enrol-with-tag',
    { type: 'enrol', name: '42', species: 'goat', class: 'male', tag: '982000123450042', inMilk: false },
  ],
])('in %s a tap on %s asks for one thing', (scene, testid, wish) => {
  const page = open(scene);
  page.click(testid);
  expect(page.socket.intents).toEqual([{ ...wish, id: expect.any(String) }]);
  expect(Intent.safeParse(page.socket.intents[0])).toMatchObject({ success: true });
});

test.each([
  ['prove-jug-rival', 'prove-jug-yes', { type: 'prove-jug', jugId: 'j7', deliberate: true }],
  ['caution-ask', 'accept-caution', { type: 'accept', code: 'interval-crosses-ceiling' }],
  ['unanswered', 'answer-given', { type: 'answer', offerId: 'o2', given: true }],
  ['unanswered', 'answer-not-given', { type: 'answer', offerId: 'o2', given: false }],
  ['undo-confirm', 'correct-confirm', { type: 'correct', treatmentId: 't9', what: { kind: 'not-given' } }],
  ['jug-water', 'mix-cancel', { type: 'mix-cancel' }],
  ['jug-new', 'jug-is-new', { type: 'mix-jug-is-empty', vesselId: null, deliberate: true }],
  ['jug-new-heavier', 'jug-is-known', { type: 'mix-jug-is-empty', vesselId: 'v1', deliberate: true }],
  ['jug-pour-far-over', 'mix-next', { type: 'mix-poured', deliberate: true }],
  ['jug-powder-weighed-far', 'powder-in', { type: 'mix-powder-in', deliberate: true }],
  ['jug-kept', 'jug-discard', { type: 'jug-discard', jugId: 'j7' }],
])('in %s only a held press on %s counts', (scene, testid, wish) => {
  const page = open(scene);
  page.click(testid);
  page.press(testid, 'pointerdown');
  page.press(testid, 'pointerup');
  expect(page.socket.intents).toEqual([]);
  holdDown(page, testid);
  expect(page.socket.intents).toEqual([{ ...wish, id: expect.any(String) }]);
  expect(Intent.safeParse(page.socket.intents[0])).toMatchObject({ success: true });
});

test('the wrong volume is stepped by the marks of the syringe that gave it', () => {
  const page = open('undo-volume');
  page.click('volume-less');
  expect(page.text('volume')).toBe('3.1 mL');
  page.click('volume-done');
  holdDown(page, 'correct-confirm');
  expect(page.socket.intents).toMatchObject([{ what: { kind: 'wrong-volume', volumeMl: 3.1 } }]);
});

test('a volume left as it was logged is no correction', () => {
  const page = open('undo');
  page.click('correct-wrong-volume');
  expect(page.get('volume-done')).toHaveProperty('disabled', true);
});

test('the animal that was logged is not among those it may have been', () => {
  const page = open('undo-animal');
  const offered = [...document.querySelectorAll<HTMLElement>('[data-animal]')].map(
    (tile) => tile.dataset['animal'],
  );
  expect(offered).toHaveLength(6);
  expect(offered).not.toContain('a1');
  page.click('animal-tile');
  holdDown(page, 'correct-confirm');
  expect(page.socket.intents).toMatchObject([{ what: { kind: 'wrong-animal', animalId: 'a2' } }]);
});

test('a syringe tapped joins the whole list of those on hand', () => {
  const page = open('shed-syringes');
  page.click('syringe-tile');
  expect(page.socket.intents).toMatchObject([
    {
      type: 'set-syringes',
      syringeIds: ['syringe-1-by-0.01', 'syringe-3-by-0.1', 'syringe-6-by-0.1', 'syringe-12-by-0.2'],
    },
  ]);
});

test('water runs while the tray’s tap is held, and stops with it', () => {
  const page = open('offered-tray');
  page.press('tray-pour', 'pointerdown');
  page.press('tray-pour', 'pointerup');
  expect(page.socket.intents).toMatchObject([
    { action: { do: 'pour', gramsPerSecond: 80 } },
    { action: { do: 'pour', gramsPerSecond: 0 } },
  ]);
});

test('a stop offers no way to accept it', () => {
  const page = open('caution-stop');
  expect(page.get('caution').dataset['strength']).toBe('stop');
  expect(page.find('accept-caution')).toBeNull();
});

test('what was open in one step is closed in the next', () => {
  const page = open('undo');
  expect(page.find('correcting')).not.toBeNull();
  const visit = { jugId: 'j7', animal: null, weight: null, onDeck: false, likely: [], unanswered: [] };
  page.patch({ round: { step: 'visit', ...visit } });
  expect(page.find('correcting')).toBeNull();
  expect(page.find('weighing')).not.toBeNull();
});

test('tiles keep their places while the likely order changes under them', () => {
  const page = open('visit-who');
  const order = (): (string | undefined)[] =>
    [...document.querySelectorAll<HTMLElement>('[data-animal]')].map((tile) => tile.dataset['animal']);
  const before = order();
  const scene = SCENES.find(({ name }) => name === 'visit-who');
  if (scene?.state.round.step !== 'visit') throw new Error('not a visit');
  page.patch({ round: { ...scene.state.round, likely: [...scene.state.round.likely].reverse() } });
  expect(order()).toEqual(before);
});
