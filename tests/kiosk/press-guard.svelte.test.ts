import { flushSync } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { KioskState } from '../../shared/state.ts';
import { type MountedApp, mountApp } from './mount-app.ts';
import { BASE, OFFER, treatment } from './preview/base-state.ts';

const visit = { jugId: 'j7', animal: 'a1', weight: null, onDeck: false, unanswered: [] };
const LOGGED: KioskState['round'] = {
  step: 'logged',
  followUps: [],
  ...visit,
  treatment: treatment('t9'),
  after: null,
  undoUntil: '2026-04-14T14:05:00Z',
};
/** What the page itself waits by, while the clock of the test stands. */
const realTimeout = setTimeout;
let app: MountedApp;

/** A click as a finger brings it: `detail` counts the fingers' clicks, and a key's has none. */
function fingerClick(testid: string): void {
  app.get(testid).dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true, detail: 1 }));
  flushSync();
}

function sent(): string[] {
  return app.socket.intents.map(({ type }) => type);
}

beforeEach(() => {
  vi.useFakeTimers();
  app = mountApp({ ...BASE, offer: OFFER, round: { step: 'offered', ...visit } }, 'platform');
});

afterEach(async () => {
  await app.close();
  vi.useRealTimers();
});

test('the finger that gave a dose presses nothing of the screen that comes under it', () => {
  app.press('give', 'pointerdown');
  vi.advanceTimersByTime(300);
  app.patch({ offer: null, round: LOGGED });
  vi.advanceTimersByTime(1000);
  app.press('next', 'pointerup');
  app.click('next');
  expect(sent()).toEqual(['give']);
});

test('a bounce just after the lift counts for nothing, a tap half a second later does', () => {
  app.press('give', 'pointerdown');
  vi.advanceTimersByTime(300);
  app.patch({ offer: null, round: LOGGED });
  app.press('next', 'pointerup');
  vi.advanceTimersByTime(300);
  app.press('next', 'pointerdown', 2);
  app.press('next', 'pointerup', 2);
  fingerClick('next');
  expect(sent()).toEqual(['give']);
  vi.advanceTimersByTime(200);
  app.press('next', 'pointerdown', 3);
  app.press('next', 'pointerup', 3);
  fingerClick('next');
  expect(sent()).toEqual(['give', 'next']);
});

test('a held finger whose end was never heard does not leave the page dead', () => {
  app.press('give', 'pointerdown');
  vi.advanceTimersByTime(300);
  app.patch({ offer: null, round: LOGGED });
  app
    .get('next')
    .dispatchEvent(new PointerEvent('pointerdown', { pointerId: 8, isPrimary: true, bubbles: true }));
  vi.advanceTimersByTime(400);
  fingerClick('next');
  expect(sent()).toEqual(['give', 'next']);
});

test('a click whose finger came down on something else is nothing at all', () => {
  app.press('skip', 'pointerdown');
  app.patch({ offer: null, round: LOGGED });
  fingerClick('next');
  expect(sent()).toEqual([]);
  vi.advanceTimersByTime(300);
  app.press('next', 'pointerdown', 2);
  fingerClick('next');
  expect(sent()).toEqual(['next']);
});

test('the second tap of a double presses nothing that came under it in between', async () => {
  app.patch({ offer: null, round: LOGGED });
  // The page is told of its own changes in a later turn.
  await new Promise((resolve) => realTimeout(resolve, 20));
  vi.advanceTimersByTime(290);
  app.press('next', 'pointerdown');
  app.press('next', 'pointerup');
  fingerClick('next');
  expect(sent()).toEqual([]);
  vi.advanceTimersByTime(10);
  app.press('next', 'pointerdown', 2);
  app.press('next', 'pointerup', 2);
  fingerClick('next');
  expect(sent()).toEqual(['next']);
});

test('a key’s click needs no finger', () => {
  app.patch({ offer: null, round: LOGGED });
  app.click('next');
  expect(sent()).toEqual(['next']);
});

test('a tap too short on a held control says so', () => {
  app.press('give', 'pointerdown');
  vi.advanceTimersByTime(100);
  app.press('give', 'pointerup');
  expect(app.text('give-hold')).toBe('Hold');
  vi.advanceTimersByTime(2000);
  flushSync();
  expect(app.find('give-hold')).toBeNull();
});
