import { flushSync } from 'svelte';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { marksToTry } from '../../kiosk/syringe-check/marks-to-try.ts';
import { Intent } from '../../shared/intent.ts';
import { type MountedApp, mountApp } from './mount-app.ts';
import { SCENES } from './preview/scenes.ts';
import { textOf } from './text-of.ts';

let app: MountedApp | undefined;

function open(name: string): MountedApp {
  const scene = SCENES.find((candidate) => candidate.name === name);
  if (scene === undefined) throw new Error(`no scene is called ${name}`);
  app = mountApp(scene.state, scene.place);
  return app;
}

/** The element of a test id with a value in one of its data fields. */
function one(testid: string, field: string, value: string): HTMLElement {
  const found = document.querySelector<HTMLElement>(`[data-testid="${testid}"][data-${field}="${value}"]`);
  if (found === null) throw new Error(`no ${testid} with ${field} ${value}`);
  return found;
}

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(async () => {
  await app?.close();
  app = undefined;
  vi.useRealTimers();
});

test.each([
  ['check-zero', 'check-next', { type: 'check-next' }],
  ['check-weight', 'check-weight-tile', { type: 'check-weight', weightId: 'kg-5' }],
  ['check-second', 'check-skip', { type: 'check-skip' }],
  ['check-corner', 'check-next', { type: 'check-next' }],
  ['check-result-failed', 'check-next', { type: 'check-next' }],
  ['check-last', 'check-begin', { type: 'check-start', role: 'platform' }],
  ['check-rule', 'check-stops', { type: 'set-check-rule', everyDays: 30, stops: true }],
  ['check-rule', 'check-days-more', { type: 'set-check-rule', everyDays: 60, stops: false }],
  ['check-rule', 'check-days-less', { type: 'set-check-rule', everyDays: 14, stops: false }],
  ['syringe-check-cup', 'syringe-check-next', { type: 'syringe-check-next' }],
  ['syringe-check-deliver', 'syringe-check-next', { type: 'syringe-check-next' }],
  ['syringe-check-deliver', 'syringe-check-leave-out', { type: 'syringe-check-leave-out' }],
  [
    'syringe-check-water',
    'syringe-check-celsius',
    { type: 'syringe-check-start', syringeId: 'syringe-12-by-0.2', markMl: 6, celsius: 5 },
  ],
])('in %s a tap on %s asks for one thing', (scene, testid, wish) => {
  const page = open(scene);
  page.click(testid);
  expect(page.socket.intents).toEqual([{ ...wish, id: expect.any(String) }]);
  expect(Intent.safeParse(page.socket.intents[0])).toMatchObject({ success: true });
});

test.each([
  ['check-corner', 'check-cancel', { type: 'check-cancel' }],
  ['syringe-check-deliver', 'syringe-check-cancel', { type: 'syringe-check-cancel' }],
  [
    'syringe-check-last',
    'syringe-check-forget',
    { type: 'syringe-check-forget', syringeId: 'syringe-6-by-0.1' },
  ],
])('in %s only a held press on %s stops it', (scene, testid, wish) => {
  const page = open(scene);
  page.press(testid, 'pointerdown');
  page.press(testid, 'pointerup');
  expect(page.socket.intents).toEqual([]);
  page.press(testid, 'pointerdown');
  vi.advanceTimersByTime(600);
  expect(page.socket.intents).toEqual([{ ...wish, id: expect.any(String) }]);
  page.press(testid, 'pointerup');
  // A click counts again only a little after the held finger was lifted.
  vi.advanceTimersByTime(500);
});

describe('the scale check', () => {
  test('opens the last check of a scale that has one, and begins at once where there is none', () => {
    const page = open('check-which');
    one('check-scale', 'role', 'bench').click();
    expect(page.socket.intents).toMatchObject([{ type: 'check-start', role: 'bench' }]);
    page.click('check-scale');
    expect(page.socket.intents).toHaveLength(1);
  });

  test('shows no number while the scale is lost, and says so', () => {
    const page = open('check-zero-lost');
    expect(page.text('check-now')).toBe('–');
    expect(document.querySelector('h1')?.textContent).toBe('Platform lost: check the cable');
    expect(page.get('check-next').classList.contains('main')).toBe(false);
  });

  test('makes the way on the main thing only when the scale rests', async () => {
    const page = open('check-middle');
    expect(page.get('check-next').classList.contains('main')).toBe(true);
    await page.close();
    expect(open('check-moving').get('check-next').classList.contains('main')).toBe(false);
  });

  test('offers no weight too light for the scale', () => {
    open('check-weight');
    expect(one('check-weight-tile', 'weight', 'water-1')).toHaveProperty('disabled', true);
    expect(one('check-weight-tile', 'weight', 'kg-20')).toHaveProperty('disabled', false);
  });

  test.each([
    ['check-corner', 'front-left'],
    ['check-corner-back', 'back-right'],
    ['check-middle', 'middle'],
    ['check-zero', 'empty'],
  ])('in %s draws the weight at %s', (scene, place) => {
    open(scene);
    expect(document.querySelector<SVGElement>('svg[data-place]')?.dataset['place']).toBe(place);
  });

  test('says the verdict in a word and a shape, and each error in divisions with its sign', () => {
    const page = open('check-result-failed');
    expect(page.get('check-result').dataset['verdict']).toBe('failed');
    expect(document.querySelector('h1')?.textContent).toBe('FAILED');
    expect(document.querySelector('svg[data-verdict="bad"]')).not.toBeNull();
    expect(one('check-error', 'spot', 'back-right').textContent?.trim()).toBe('−7 d');
    expect(one('check-error', 'spot', 'front-left').textContent?.trim()).toBe('+1 d');
    expect(one('check-error', 'spot', 'corners').textContent).toContain('8 d');
  });

  test('shows the last check and its verdict on the door', async () => {
    open('shed');
    expect(one('shed-check', 'testid', 'shed-check').textContent).toContain('Passed Thu 2 Apr');
    expect(one('shed-syringe-check', 'testid', 'shed-syringe-check').textContent).toContain('Good Thu 9 Apr');
    await app?.close();
    const page = open('check-shed-failed');
    expect(page.text('shed-check')).toContain('Failed');
    expect(page.get('shed-check').classList.contains('chosen')).toBe(true);
  });

  test('that holds the platform is named where animals are weighed', () => {
    const page = open('check-platform-busy');
    expect(page.get('weighing').querySelector('h1')?.textContent).toBe('Scale check on: see Shed');
    expect(page.text('platform-live')).toBe('–');
  });

  test('that failed sends a stopped dose to the check itself', () => {
    const page = open('caution-scale-failed');
    page.click('stop-to-shed');
    expect(page.find('check-which')).not.toBeNull();
  });
});

describe('the syringe check', () => {
  test('leads from the syringe over its mark to the water', () => {
    const page = open('syringe-check-mark');
    one('syringe-check-to', 'mark', '6').click();
    flushSync();
    one('syringe-check-celsius', 'celsius', '20').click();
    expect(page.socket.intents).toMatchObject([{ syringeId: 'syringe-12-by-0.2', markMl: 6, celsius: 20 }]);
  });

  test('closes the marks a bench is too coarse for, and says which steps would do', () => {
    const page = open('syringe-check-mark-coarse');
    expect(one('syringe-check-to', 'mark', '6')).toHaveProperty('disabled', true);
    expect(one('syringe-check-to', 'mark', '12')).toHaveProperty('disabled', false);
    expect(page.text('needed-step')).toBe('needs steps of 0.1 g');
  });

  test('counts the delivery under way, and blanks its weight with the link', async () => {
    expect(open('syringe-check-deliver').text('syringe-check-count')).toBe('4 of 10');
    await app?.close();
    expect(open('syringe-check-deliver-silent').text('syringe-check-now')).toBe('–');
  });

  test.each([
    ['syringe-check-result', 'GOOD', '0.03 mL (1 %) too little'],
    ['syringe-check-result-outside', 'OFF', '0.31 mL (10.3 %) too much'],
  ])('in %s says %s and how far the mean is off', (scene, verdict, bias) => {
    open(scene);
    expect(document.querySelector('h1')?.textContent).toBe(verdict);
    expect(textOf(one('syringe-check-figure', 'figure', 'bias'))).toContain(bias);
  });

  test('has marks to try that a syringe has, none of them twice', () => {
    expect(marksToTry(6, 0.1)).toEqual([1.5, 3, 4.5, 6]);
    expect(marksToTry(1, 0.01)).toEqual([0.25, 0.5, 0.75, 1]);
    expect(marksToTry(2, 1)).toEqual([1, 2]);
  });
});
