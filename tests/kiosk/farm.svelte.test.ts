import { afterEach, describe, expect, test, vi } from 'vitest';
import { type MountedApp, mountApp } from './mount-app.ts';
import { BASE } from './preview/base-state.ts';
import { APART, FARM_SCENES } from './preview/farm-scenes.ts';
import { soon } from './soon.ts';

let app: MountedApp | undefined;
afterEach(() => app?.close());

function open(name: string): MountedApp {
  const scene = FARM_SCENES.find((each) => each.name === name);
  if (scene === undefined) throw new Error(`there is no scene ${name}`);
  app = mountApp(scene.state, scene.place);
  return app;
}

function hold(page: MountedApp, testid: string): void {
  vi.useFakeTimers();
  page.press(testid, 'pointerdown');
  vi.advanceTimersByTime(800);
  page.press(testid, 'pointerup');
  vi.useRealTimers();
}

describe('the other kiosks', () => {
  test('a held press takes the invitation on the stick, a tap does not', async () => {
    const page = open('shed-farm-invited');
    await soon(() => page.click('farm-join'));
    expect(page.socket.intents).toEqual([]);
    hold(page, 'farm-join');
    expect(page.socket.intents).toEqual([{ type: 'join-farm', id: expect.any(String) }]);
  });

  test('what waits while the hub is not reached is told with what to do', async () => {
    const page = open('shed-farm-cut');
    await soon(() => expect(page.text('farm-to-push')).toBe('128 records'));
    expect(page.text('farm-trouble')).toContain('works on');
  });

  test('an animal dosed at two kiosks stands in the way at home until somebody held that it was read', async () => {
    const page = open('home-dosed-apart');
    await soon(() => expect(page.text('dosed-apart')).toContain('Old Bramble was dosed twice'));
    expect(page.text('dosed-apart')).toContain('at South shed');
    hold(page, 'apart-read');
    expect(page.socket.intents).toEqual([
      { type: 'read-apart', id: expect.any(String), one: 't1', other: 't2' },
    ]);
  });

  test('and is told on every other screen', () => {
    app = mountApp({ ...BASE, farm: { ...BASE.farm, apart: [APART] } }, 'platform');
    expect(app.text('apart-banner')).toContain('Old Bramble');
  });
});
