import { afterEach, describe, expect, test, vi } from 'vitest';
import type { OfficesView } from '../../shared/farm.ts';
import { type MountedApp, mountApp } from './mount-app.ts';
import { BASE } from './preview/base-state.ts';
import { APART, FARM_SCENES, OFFICES } from './preview/farm-scenes.ts';
import { soon } from './soon.ts';

let app: MountedApp | undefined;
afterEach(() => app?.close());

function open(name: string): MountedApp {
  const scene = FARM_SCENES.find((each) => each.name === name);
  if (scene === undefined) throw new Error(`there is no scene ${name}`);
  app = mountApp(scene.state, scene.place, scene.http);
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

  test('an office that asks is let in by a held press, through the hub, and stands as it answers', async () => {
    const page = open('shed-offices');
    await soon(() => expect(page.text('offices')).toContain('Hill Practice'));
    page.click('office-tile');
    await soon(() => expect(page.text('one-office')).toContain('asks to read'));
    const said: unknown[] = [];
    const answers: OfficesView = { offices: OFFICES.offices.map((each) => ({ ...each, state: 'reads' })) };
    vi.stubGlobal('fetch', async (_path: string, asked?: RequestInit) => {
      if (asked?.method === 'POST') said.push(JSON.parse(String(asked.body)));
      return Response.json(asked?.method === 'POST' ? answers : OFFICES);
    });
    page.click('office-let-in');
    expect(said).toEqual([]);
    hold(page, 'office-let-in');
    await soon(() => expect(page.text('one-office')).toContain('reads since'));
    expect(said).toEqual([{ office: 'o-1', reads: true }]);
    expect(page.socket.intents).toEqual([]);
  });

  test('a hub that does not answer is told of, and nothing is shown as done', async () => {
    const page = open('shed-office-reads');
    await soon(() => expect(page.text('one-office')).toContain('Dale Dairy'));
    vi.stubGlobal('fetch', async () => new Response('{}', { status: 502 }));
    hold(page, 'office-shut-out');
    await soon(() => expect(page.text('office-refused')).toContain('did not do it'));
    expect(page.text('one-office')).toContain('reads since');
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
