import { flushSync } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type MountedApp, mountApp } from './mount-app.ts';
import { BASE } from './preview/base-state.ts';

let app: MountedApp;

/** Lets time pass on a page whose server goes on telling of itself. */
function pass(ms: number): void {
  for (let left = ms; left > 0; left -= 1000) {
    vi.advanceTimersByTime(Math.min(1000, left));
    app.patch({});
  }
  flushSync();
}

beforeEach(() => {
  vi.useFakeTimers();
  app = mountApp(BASE, 'shed/screen');
  app.click('shed-clean');
});

afterEach(async () => {
  await app.close();
  vi.useRealTimers();
});

test('the lock counts down and ends by itself after 30 s', () => {
  expect(app.text('cleaning-left')).toBe('30');
  pass(12_000);
  expect(app.text('cleaning-left')).toBe('18');
  pass(17_900);
  expect(app.find('cleaning')).not.toBeNull();
  pass(200);
  expect(app.find('cleaning')).toBeNull();
});

test('a finger on each corner for a second ends it', () => {
  app.press('corner-first', 'pointerdown', 1);
  app.press('corner-second', 'pointerdown', 2);
  pass(990);
  expect(app.find('cleaning')).not.toBeNull();
  pass(20);
  expect(app.find('cleaning')).toBeNull();
});

test.each([
  ['one finger on one corner', [['corner-first', 'pointerdown', 1]]],
  [
    'two fingers on one corner',
    [
      ['corner-first', 'pointerdown', 1],
      ['corner-first', 'pointerdown', 2],
    ],
  ],
  [
    'a cloth that goes from one corner to the other',
    [
      ['corner-first', 'pointerdown', 1],
      ['corner-first', 'pointerleave', 1],
      ['corner-second', 'pointerdown', 1],
    ],
  ],
] as const)('%s does not end it', (_, touches) => {
  for (const [testid, kind, pointerId] of touches) app.press(testid, kind, pointerId);
  pass(20_000);
  expect(app.find('cleaning')).not.toBeNull();
});

test('it goes on where the link drops and comes back, and ends where the kiosk then stands', () => {
  pass(10_000);
  app.socket.drop();
  vi.advanceTimersByTime(2000);
  flushSync();
  expect(app.find('not-connected')).not.toBeNull();
  expect(app.text('cleaning-left')).toBe('18');
  expect(app.find('cleaning-cut')).not.toBeNull();
  app.socket.welcome(BASE);
  pass(5000);
  expect(app.find('cleaning-cut')).toBeNull();
  expect(app.text('cleaning-left')).toBe('13');
  app.socket.drop();
  vi.advanceTimersByTime(13_200);
  flushSync();
  expect(app.find('cleaning')).toBeNull();
  expect(app.find('not-connected')).not.toBeNull();
});

test('two fingers on the corners end it while nothing is reached', () => {
  app.socket.drop();
  flushSync();
  app.press('corner-first', 'pointerdown', 1);
  app.press('corner-second', 'pointerdown', 2);
  vi.advanceTimersByTime(1100);
  flushSync();
  expect(app.find('cleaning')).toBeNull();
  expect(app.find('not-connected')).not.toBeNull();
});

test('what the wiping does just after it presses nothing', () => {
  pass(30_000);
  expect(app.find('cleaning')).toBeNull();
  app
    .get('face-glare')
    .dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true, detail: 1 }));
  expect(app.socket.intents).toEqual([]);
});
