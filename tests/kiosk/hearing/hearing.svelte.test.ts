import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { EarView, PageWish } from '../../../shared/ear.ts';
import { type FakeMicrophone, fakeMicrophone } from '../fake-microphone.ts';
import { type MountedApp, mountApp } from '../mount-app.ts';
import { BASE } from '../preview/base-state.ts';
import { earWith } from '../preview/hearing-scenes.ts';
import { SCENES } from '../preview/scenes.ts';
import { soon } from '../soon.ts';

let fake: FakeMicrophone;
let app: MountedApp;

/** A page whose own microphone the ear is to use. */
const PAGE = { source: null, listening: 'off', trouble: 'no-microphone' } as const;

beforeEach(() => {
  fake = fakeMicrophone();
});
afterEach(async () => {
  await app.close();
  vi.unstubAllGlobals();
});

async function page(ear: Partial<EarView> = PAGE, scene = 'home'): Promise<void> {
  const found = SCENES.find(({ name }) => name === scene);
  app = mountApp({ ...(found?.state ?? BASE), ear: earWith(ear) }, found?.place ?? scene);
  await soon(() => app.get('ear-light'));
}
const told = (type: string) => app.socket.sent.filter((message) => message.type === type);
const opened = { type: 'microphone', rate: 16_000, channels: 1 };
const wish = (asked: PageWish): void => app.socket.tell({ type: 'spoken-wish', wish: asked });
const later = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

describe('talking', () => {
  test('the first press opens the microphone, which stays open after it; talk is told with each', async () => {
    await page();
    expect(fake.asked).toEqual([]);
    app.press('talk', 'pointerdown');
    await soon(() => expect(told('microphone')).toEqual([opened]));
    app.press('talk', 'pointerup');
    expect(told('talk')).toEqual([
      { type: 'talk', on: true },
      { type: 'talk', on: false },
    ]);
    expect(fake.held).toBe(1);
    fake.hears([5, -5]);
    expect(app.socket.sounds.map((sound) => [...new Int16Array(sound)])).toEqual([[5, -5]]);
  });

  test('sound that the line cannot take is dropped, not kept', async () => {
    await page();
    app.press('talk', 'pointerdown');
    await soon(() => expect(told('microphone')).toEqual([opened]));
    app.socket.bufferedAmount = 40_000;
    fake.hears([1]);
    app.socket.bufferedAmount = 0;
    fake.hears([2]);
    expect(app.socket.sounds.map((sound) => [...new Int16Array(sound)])).toEqual([[2]]);
  });

  test('set to hear when called it opens the microphone by itself, and set off it closes it', async () => {
    await page({ ...PAGE, mode: 'wake' });
    await soon(() => expect(told('microphone')).toEqual([opened]));
    app.patch({ ear: earWith({ mode: 'off', source: null }) });
    expect(fake.held).toBe(0);
    expect(told('microphone').at(-1)).toEqual({ type: 'microphone', rate: null, why: 'closed' });
    expect(app.find('ear-light')).toBeNull();
    expect(app.find('talk')).toBeNull();
  });

  test('where the board listens the page opens none', async () => {
    await page({ mode: 'wake' });
    app.press('talk', 'pointerdown');
    await later(20);
    expect(fake.asked).toEqual([]);
    expect(told('talk')).toEqual([{ type: 'talk', on: true }]);
  });

  test('a microphone that is kept from the page is told, with what to do', async () => {
    fake.refuse = 'NotAllowedError';
    await page();
    app.press('talk', 'pointerdown');
    await soon(() =>
      expect(told('microphone')).toEqual([{ type: 'microphone', rate: null, why: 'blocked' }]),
    );
    app.press('talk', 'pointerup');
    await soon(() => expect(app.get('ear-light').dataset['light']).toBe('trouble'));
    app.click('ear-light');
    expect(app.text('say-remedy')).toMatch(/Allow it/);
    // Allowed since, the next press tries it.
    fake.refuse = null;
    app.press('talk', 'pointerdown');
    await soon(() => expect(told('microphone').at(-1)).toEqual(opened));
  });

  test('cut off the page lets the microphone go, and a new connection is told of it', async () => {
    await page({ ...PAGE, mode: 'wake' });
    await soon(() => expect(told('microphone')).toEqual([opened]));
    app.socket.drop();
    await soon(() => expect(fake.held).toBe(0));
    await soon(() => expect(app.sockets).toHaveLength(2));
    app.socket.welcome({ ...BASE, ear: earWith({ ...PAGE, mode: 'wake' }) });
    await soon(() => expect(told('microphone').at(-1)).toEqual(opened));
    fake.hears([7]);
    expect(app.socket.sounds).toHaveLength(1);
  });

  test('out of sight the page lets the microphone go, and has it again when it is seen', async () => {
    await page({ ...PAGE, mode: 'wake' });
    await soon(() => expect(fake.held).toBe(1));
    const seen = vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('hidden');
    document.dispatchEvent(new Event('visibilitychange'));
    expect(fake.held).toBe(0);
    seen.mockRestore();
    document.dispatchEvent(new Event('visibilitychange'));
    await soon(() => expect(fake.held).toBe(1));
  });

  test('the footswitch talks as the plate does, and a short touch of the plate says to hold it', async () => {
    await page({ ...PAGE, key: 'F13' });
    document.body.dispatchEvent(new KeyboardEvent('keydown', { code: 'F13', bubbles: true }));
    document.body.dispatchEvent(new KeyboardEvent('keyup', { code: 'F13', bubbles: true }));
    expect(told('talk')).toHaveLength(2);
    app.press('talk', 'pointerdown');
    app.press('talk', 'pointerup');
    expect(app.text('talk')).toBe('Hold');
  });

  test('before the safety words are read nothing is heard', async () => {
    app = mountApp({ ...BASE, safetyRead: false, ear: earWith({ ...PAGE, mode: 'wake' }) });
    await later(300);
    expect(fake.asked).toEqual([]);
    app.patch({ safetyRead: true });
    await soon(() => expect(fake.held).toBe(1));
  });
});

describe('what was heard', () => {
  const heard = (
    number: number,
    outcome: 'done' | 'refused' | 'not-understood',
    sentence: string | null,
  ) => ({
    ear: earWith({ heard: { number, words: 'given three point two', outcome, sentence } }),
  });

  test('is shown beside the dose, never over it, and the sentence of a refusal with it', async () => {
    await page({}, 'offered');
    app.patch(heard(1, 'refused', 'Look at the syringe.'));
    expect(app.get('ear-light').dataset['light']).toBe('refused');
    expect(app.text('ear-light')).toMatch('given three point two');
    expect(app.text('refusal')).toBe('Look at the syringe.');
    expect(app.find('dose-volume')).not.toBeNull();
  });

  test('the one who was called is told by name and number', async () => {
    await page();
    app.patch(heard(1, 'done', 'Bramble · 417'));
    expect(app.text('ear-light')).toBe('Bramble · 417');
    expect(app.find('refusal')).toBeNull();
  });

  test('what was heard before the page came is not shown as new', async () => {
    await page({ heard: { number: 9, words: 'home screen', outcome: 'done', sentence: null } });
    expect(app.get('ear-light').dataset['light']).toBe('waiting');
    app.patch(heard(10, 'not-understood', null));
    expect(app.get('ear-light').dataset['light']).toBe('not-understood');
  });

  test('talking again answers it', async () => {
    await page();
    app.patch(heard(1, 'refused', 'Look at the syringe.'));
    app.press('talk', 'pointerdown');
    expect(app.find('refusal')).toBeNull();
  });

  test('the sheet lists what may be said and who cannot be called, and goes when something was done', async () => {
    await page();
    app.click('ear-light');
    expect(app.text('say-sheet')).toMatch('eyelid score three');
    app.click('left-out');
    expect(app.text('left-out-list')).toMatch(/Clover.*another has the same/);
    app.patch(heard(1, 'done', null));
    expect(app.find('left-out-list')).toBeNull();
  });
});

describe('what only the page can do', () => {
  test('a screen that was asked for is opened', async () => {
    await page();
    wish({ type: 'screen', screen: 'platform' });
    await soon(() => expect(location.hash).toBe('#platform'));
  });

  test('it waits for the finger that is on the screen', async () => {
    await page({}, 'offered');
    app.press('give', 'pointerdown');
    wish({ type: 'screen', screen: 'home' });
    await later(100);
    expect(location.hash).toBe('#platform');
    app.press('give', 'pointerup');
    await soon(() => expect(location.hash).toBe('#home'));
  });

  test('the hand that talks does not hold it up', async () => {
    await page();
    app.press('talk', 'pointerdown');
    wish({ type: 'screen', screen: 'shed' });
    await soon(() => expect(location.hash).toBe('#shed'));
  });

  test('undo asks what happened, of that treatment only, and not again when one comes back', async () => {
    await page({}, 'logged');
    wish({ type: 'undo', treatmentId: 'another' });
    await later(50);
    expect(app.find('correcting')).toBeNull();
    wish({ type: 'undo', treatmentId: 't9' });
    await soon(() => app.get('correcting'));
    expect(location.hash).toBe('#platform');
    wish({ type: 'screen', screen: 'home' });
    await soon(() => expect(location.hash).toBe('#home'));
    wish({ type: 'screen', screen: 'platform' });
    await soon(() => app.get('logged'));
  });

  test('while the ear is tried out the screen stays', async () => {
    await page({}, 'try-out');
    await soon(() => app.get('try-out'));
    wish({ type: 'screen', screen: 'home' });
    await later(50);
    expect(app.find('try-out')).not.toBeNull();
  });
});

describe('Listening at Shed', () => {
  const settings = { mode: 'press', key: null, recording: false };
  test.each([
    ['listening', 'ear-wake', { mode: 'wake' }],
    ['listening', 'ear-off', { mode: 'off' }],
    ['listening/recording', 'record', { recording: true }],
  ])('at %s a tap on %s keeps one change', async (place, testid, change) => {
    await page({}, `shed/${place}`);
    await soon(() => app.get(testid));
    app.click(testid);
    expect(app.socket.intents).toEqual([
      { type: 'set-ear', id: expect.any(String), ear: { ...settings, ...change } },
    ]);
  });

  test('the footswitch is learnt by pressing it, and shown to work', async () => {
    await page({}, 'shed/listening/foot');
    await soon(() => app.get('foot-waiting'));
    document.body.dispatchEvent(new KeyboardEvent('keydown', { code: 'PageDown', bubbles: true }));
    expect(app.socket.intents).toMatchObject([{ type: 'set-ear', ear: { key: 'PageDown' } }]);
    app.patch({ ear: earWith({ key: 'PageDown' }) });
    expect(app.get('foot-state').dataset['down']).toBe('false');
    document.body.dispatchEvent(new KeyboardEvent('keydown', { code: 'PageDown', bubbles: true }));
    await soon(() => expect(app.get('foot-state').dataset['down']).toBe('true'));
    app.click('foot-forget');
    expect(app.socket.intents.at(-1)).toMatchObject({ ear: { key: null } });
  });

  test('the microphone is tried even where the ear is off, and its sound goes nowhere', async () => {
    await page({}, 'shed/listening/microphone');
    app.patch({ ear: earWith({ mode: 'off', source: null }) });
    await soon(() => expect(app.get('microphone-state').dataset['state']).toBe('open'));
    fake.hears(Array.from({ length: 512 }, (_, at) => (at % 2 === 0 ? 3277 : -3277)));
    await soon(() => expect(app.get('level').dataset['db']).toBe('-20'));
    expect(app.text('loudness')).toBe('Good.');
    expect(app.socket.sounds).toEqual([]);
    wish({ type: 'screen', screen: 'home' });
    await soon(() => expect(fake.held).toBe(0));
  });

  test('recordings are wiped by a held press, and only where there are some', async () => {
    await page({ recordedBytes: 0 }, 'shed/listening/recording');
    await soon(() => expect(app.get('wipe-recordings')).toMatchObject({ disabled: true }));
    app.patch({ ear: earWith({ recordedBytes: 5e6, recording: true }) });
    expect(app.text('recorded')).toBe('5.0 MB kept');
    expect(app.find('recording-lamp')).not.toBeNull();
    app.press('wipe-recordings', 'pointerdown');
    await soon(() => expect(app.socket.intents).toMatchObject([{ type: 'wipe-recordings' }]));
  });
});
