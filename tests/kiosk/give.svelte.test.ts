import { flushSync } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { KioskState } from '../../shared/state.ts';
import { type MountedApp, mountApp } from './mount-app.ts';
import { BASE, OFFER, TWO_DRAWS } from './preview/base-state.ts';

const visit = { jugId: 'j7', animal: 'a1', weight: null, onDeck: false, unanswered: [] };
const OFFERED: KioskState = { ...BASE, offer: OFFER, round: { step: 'offered', ...visit } };
let app: MountedApp;

function give(): void {
  app.press('give', 'pointerdown');
  vi.advanceTimersByTime(300);
  app.press('give', 'pointerup');
}

beforeEach(() => {
  vi.useFakeTimers();
  app = mountApp(OFFERED, 'platform');
});

afterEach(async () => {
  await app.close();
  vi.useRealTimers();
});

test('the offer is shown from the offer alone', () => {
  expect(app.text('dose-volume')).toBe('3.3 mL');
  expect(app.text('dose-strength')).toBe('49.45 mg/mL');
  expect(app.text('dose-syringe')).toBe('6 mL syringe');
  expect(app.text('dose-interval')).toBe('12 mg/kg (11.3 to 12.7)');
  expect(app.text('animal-name')).toBe('Clover');
  expect(app.text('platform-held')).toBe('30.0 lb');
  expect(app.text('minutes-left')).toBe('9 min left');
});

test('one deliberate press sends one give that names the offer', () => {
  give();
  expect(app.socket.intents).toEqual([
    { type: 'give', id: expect.any(String), offerId: 'o1', outcome: 'whole' },
  ]);
});

test('further presses send nothing while the answer is awaited', () => {
  give();
  for (let press = 0; press < 5; press += 1) give();
  app.patch({ platform: { ...BASE.platform, live: 10 } });
  give();
  expect(app.socket.intents).toHaveLength(1);
});

test('a refused give shows why and may be tried again', () => {
  give();
  const id = app.socket.intents[0]?.id ?? '';
  app.socket.tell({
    type: 'answer',
    answer: { ok: false, id, repeated: false, code: 'not-written', message: 'The card is full.' },
  });
  app.patch({});
  expect(app.text('refusal')).toBe('The card is full.');
  give();
  expect(app.socket.intents).toHaveLength(2);
});

test('the next offer can be given', () => {
  give();
  app.patch({ offer: null, round: { step: 'logging', ...visit } });
  app.patch({ offer: TWO_DRAWS, round: { step: 'offered', ...visit } });
  expect(app.text('dose-volume')).toBe('11.5 mL');
  expect(app.text('dose-draws')).toBe('5.8 mL + 5.7 mL');
  give();
  expect(app.socket.intents.map((intent) => intent.type === 'give' && intent.offerId)).toEqual(['o1', 'o2']);
});

test('a part dose and a whole one cannot both be sent for one offer', () => {
  app.click('other-outcome');
  app.click('part-open');
  app.press('give-part', 'pointerdown');
  vi.advanceTimersByTime(600);
  app.press('give-part', 'pointerup');
  vi.advanceTimersByTime(400);
  app.click('part-back');
  app.click('outcome-back');
  expect(app.get('give')).toHaveProperty('disabled', true);
  give();
  expect(app.socket.intents).toEqual([expect.objectContaining({ type: 'give', outcome: 'part' })]);
});

test('a part dose is logged with what the marks show is still in the syringe, once that was read', () => {
  app.click('other-outcome');
  app.click('part-open');
  expect(app.get('give-part-left')).toHaveProperty('disabled', true);
  app.click('left-less');
  app.press('give-part-left', 'pointerdown');
  vi.advanceTimersByTime(600);
  app.press('give-part-left', 'pointerup');
  // 33 marks were drawn; half of them, less the one taken off, are left.
  expect(app.socket.intents).toEqual([
    expect.objectContaining({ type: 'give', outcome: 'part', leftMl: 1.5 }),
  ]);
});

test('a platform that falls silent leaves the dose and its control, and says so', () => {
  app.patch({ platform: { ...BASE.platform, link: 'silent', live: null, verdict: 'blank' } });
  expect(app.text('dose-volume')).toBe('3.3 mL');
  expect(app.text('dose-stands')).toContain('silent');
  expect(app.text('platform-live')).toBe('–');
  give();
  expect(app.socket.intents).toHaveLength(1);
});

test('a cut connection takes the dose off the screen and a reconnect brings it back, once givable', () => {
  give();
  app.socket.drop();
  flushSync();
  expect(app.find('dose-volume')).toBeNull();
  vi.advanceTimersByTime(250);
  app.socket.welcome(OFFERED);
  flushSync();
  expect(app.text('dose-volume')).toBe('3.3 mL');
  give();
  expect(app.socket.intents).toHaveLength(1);
});
