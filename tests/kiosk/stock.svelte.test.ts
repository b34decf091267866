import { expect, test } from 'vitest';
import type { MountedApp } from './mount-app.ts';
import { openScene } from './open-scene.ts';
import { SCENES } from './preview/scenes.ts';
import { soon } from './soon.ts';

async function open(name: string, shown: string): Promise<MountedApp> {
  const scene = SCENES.find((each) => each.name === name);
  if (scene === undefined) throw new Error(`no scene ${name}`);
  const { taps = [], ...rest } = scene;
  const app = await openScene(rest);
  await soon(() => app.get(shown));
  for (const tap of taps) app.click(tap);
  return app;
}

function sent(app: MountedApp) {
  return app.socket.intents.at(-1);
}

async function hold(app: MountedApp, testid: string): Promise<void> {
  const before = app.socket.intents.length;
  app.press(testid, 'pointerdown');
  await soon(() => expect(app.socket.intents.length).toBeGreaterThan(before));
  // Clicks are swallowed until the finger is up, and a little longer.
  window.dispatchEvent(new PointerEvent('pointerup', { pointerId: 1 }));
  await new Promise((done) => setTimeout(done, 450));
}

test('what came in is taken in by tiles, keypad and pickers, and by one held press', async () => {
  const app = await open('stock-receive-confirm', 'receive-which');
  await hold(app, 'receive-take-in');
  expect(sent(app)).toMatchObject({
    type: 'stock-receive',
    presentationId: 'levamisole-52g',
    lot: '4B',
    expiry: { year: 2028, month: 4 },
    holdsMl: null,
    pieces: 10,
    priceMinor: 12_400,
  });
  await app.close();
});

test('a lot without a number and without a price is taken in as that', async () => {
  const app = await open('stock-receive', 'receive-which');
  for (const tap of ['receive-kind', 'letters-done', 'month-set', 'key-3', 'key-done', 'price-none'])
    app.click(tap);
  await hold(app, 'receive-take-in');
  expect(sent(app)).toMatchObject({ lot: null, pieces: 3, priceMinor: null });
  await app.close();
});

test('a count and a throwing away name the lot', async () => {
  const count = await open('stock-count', 'stock-count');
  count.click('key-done');
  expect(sent(count)).toMatchObject({ type: 'stock-count', lotId: 'lot-1', pieces: 2.5 });
  await count.close();
  const away = await open('stock-away-some', 'away-why');
  await hold(away, 'away-hold');
  expect(sent(away)).toMatchObject({ type: 'stock-throw-away', lotId: 'lot-1', pieces: 1, why: 'spoilt' });
  await away.close();
});

test('a mix asks for the lot: an expired one cannot be tapped, and one not from stock is let through', async () => {
  const app = await open('jug-lot-expired', 'choose-lot');
  expect(app.get('lot').hasAttribute('disabled')).toBe(true);
  app.click('not-from-stock');
  expect(sent(app)).toMatchObject({ type: 'mix-lot', lotId: null });
  await app.close();
  const other = await open('jug-lot', 'choose-lot');
  other.click('lot');
  expect(sent(other)).toMatchObject({ type: 'mix-lot', lotId: 'lot-1' });
  await other.close();
});

test('a bottle of a lot is opened without asking for what was read when it came in', async () => {
  const app = await open('bottle-lot-open', 'bottle-which');
  await hold(app, 'bottle-open');
  expect(sent(app)).toMatchObject({
    type: 'open-bottle',
    volumeMl: 1000,
    expiry: { year: 2028, month: 1 },
    lotId: 'lot-4',
  });
  await app.close();
});

test('home and shed name what needs a look, and nothing else of the stock', async () => {
  const app = await open('stock-home', 'door-shed');
  expect(app.text('door-shed')).toContain('1 lot expired');
  app.patch({ stock: { currency: 'EUR', lots: [], expired: [], last: [] } });
  expect(app.text('door-shed')).not.toContain('expired');
  await app.close();
});

test('a lot tells what happened to it, with the difference of a count', async () => {
  const app = await open('stock-lot-history', 'lot-history');
  const rows = [...document.querySelectorAll('[data-testid="stock-event"]')].map((row) => row.textContent);
  expect(rows[0]).toContain('difference −1');
  expect(rows[1]).toContain('jug 7');
  expect(rows[4]).toContain('€124.00 for all');
  await app.close();
});
