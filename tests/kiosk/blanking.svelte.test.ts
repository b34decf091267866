import { flushSync } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { LinkStatus } from '../../shared/shed.ts';
import type { KioskState } from '../../shared/state.ts';
import { type MountedApp, mountApp } from './mount-app.ts';
import { BASE, PLAN } from './preview/base-state.ts';

const VISIT: KioskState = {
  ...BASE,
  platform: { ...BASE.platform, live: 24_700, verdict: 'settling' },
  round: {
    step: 'visit',
    jugId: 'j7',
    animal: null,
    weight: null,
    onDeck: true,
    likely: ['a1'],
    unanswered: [],
  },
};
let app: MountedApp | undefined;

function mountAt(state: KioskState | null, place: string): MountedApp {
  app = mountApp(state, place);
  return app;
}

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(async () => {
  await app?.close();
  vi.useRealTimers();
});

test('a weight is shown while it is current', () => {
  expect(mountAt(VISIT, 'platform').text('platform-live')).toBe('54.5 lb');
});

test.each<LinkStatus>(['absent', 'opening', 'settling', 'silent', 'lost'])(
  'a platform that is %s shows a dash and a word, and no number',
  (link) => {
    const page = mountAt(VISIT, 'platform');
    page.patch({ platform: { ...VISIT.platform, link, live: null, verdict: 'blank' } });
    expect(page.text('platform-live')).toBe('–');
    expect(page.get('link-platform').dataset['link']).toBe(link);
    expect(page.get('weighing').querySelector('h1')?.textContent).not.toBe('');
    expect(page.get('weighing').textContent).not.toMatch(/54/);
  },
);

test('five silent seconds of the server blank every weight', () => {
  const page = mountAt(VISIT, 'platform');
  vi.advanceTimersByTime(5000);
  flushSync();
  expect(page.get('not-connected').dataset['status']).toBe('cut');
  expect(page.text('platform-live')).toBe('–');
  expect(document.body.textContent).not.toMatch(/54\.5/);
});

test('it comes back by itself, with the state of the server as it is then', () => {
  const page = mountAt(VISIT, 'platform');
  page.socket.drop();
  vi.advanceTimersByTime(250);
  page.socket.welcome({ ...VISIT, bootId: 'boot-2', platform: { ...VISIT.platform, live: 10_000 } });
  flushSync();
  expect(page.find('not-connected')).toBeNull();
  expect(page.text('platform-live')).toBe('22.0 lb');
});

test('nothing is shown as current before the server has spoken', () => {
  const page = mountAt(null, 'platform');
  expect(page.text('platform-live')).toBe('–');
  expect(page.text('jug-now')).toBe('–');
});

test('a server of another protocol is told apart, and no state of it is shown', () => {
  const page = mountAt(null, 'home');
  page.socket.open();
  page.socket.say('{"type":"hello","protocol":99,"bootId":"b"}');
  flushSync();
  expect(page.get('not-connected').dataset['status']).toBe('mismatch');
  expect(page.find('reload')).not.toBeNull();
});

test('a bench that is silent shows a dash in the middle of a pour', () => {
  const page = mountAt(
    {
      ...BASE,
      bench: { link: 'silent', live: null, steady: false, division: 1 },
      jug: {
        step: 'pour',
        plan: PLAN,
        letter: 'A',
        pour: {
          advice: 'pour',
          nowGrams: null,
          targetGrams: 903.5,
          bandGrams: 4.5,
          steady: false,
          farStrengthMgPerMl: null,
        },
      },
    },
    'jug',
  );
  expect(page.text('jug-now')).toBe('–');
  expect(page.text('jug-target')).toBe('904 g');
  expect(page.get('link-bench').dataset['link']).toBe('silent');
});

test('a refusal is shown for five seconds and changes nothing else', () => {
  const page = mountAt(VISIT, 'platform');
  const before = page.get('weighing').outerHTML;
  page.socket.tell({
    type: 'answer',
    answer: { ok: false, id: 'x', repeated: false, code: 'wrong-state', message: 'Not now.' },
  });
  flushSync();
  expect(page.text('refusal')).toBe('Not now.');
  vi.advanceTimersByTime(4000);
  page.socket.tell({ type: 'pong' });
  vi.advanceTimersByTime(1000);
  flushSync();
  expect(page.find('refusal')).toBeNull();
  expect(page.get('weighing').outerHTML).toBe(before);
});
