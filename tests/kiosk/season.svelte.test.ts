import { expect, test } from 'vitest';
import { seasonCurve } from '../../kiosk/season/season-geometry.ts';
import type { SeasonView } from '../../shared/season.ts';
import type { MountedApp } from './mount-app.ts';
import { openScene } from './open-scene.ts';
import { SCENES } from './preview/scenes.ts';
import { soon } from './soon.ts';

type Day = Extract<SeasonView['outlook'], { kind: 'ready' }>['days'][number];

async function open(name: string, shown: string): Promise<MountedApp> {
  const scene = SCENES.find((each) => each.name === name);
  if (scene === undefined) throw new Error(`no scene ${name}`);
  const app = await openScene({ ...scene, taps: [] });
  await soon(() => app.get(shown));
  for (const tap of scene.taps ?? []) app.click(tap);
  return app;
}

const sent = (app: MountedApp) => app.socket.intents.at(-1);

test('the weather suggests beside what is set, says it is no count, and the keeper sets by one tap', async () => {
  const app = await open('season', 'season-says');
  expect(app.text('season-says')).toBe('The weather says: HIGH');
  expect(app.text('season')).toContain('A guide, not a count');
  expect(app.text('season-turn')).toContain('Season set: LOW');
  app.click('season-turn');
  expect(sent(app)).toMatchObject({ type: 'set-worm-season', season: 'high' });
  await app.close();
});

test('what is lacking is said, each thing by itself', async () => {
  const app = await open('season-lacking', 'season-remarks');
  const said = app.text('season-remarks');
  expect(app.text('season-says')).toBe('Too few days to tell');
  expect(said).toContain('The last 2 days are missing.');
  expect(said).toContain('Forecast rain missing: 4 of the 4 days it needs.');
  expect(said).toContain('Known: 20 of 28 days.');
  expect(said).toContain('A gap of 9 days before 25 Mar 2026.');
  expect(said).toContain('3 days rest on old forecasts.');
  await app.close();
});

test('the latitude is set by a tap and the keypad, south below zero and none beyond the pole', async () => {
  const app = await open('season-degrees', 'latitude-side');
  app.click('key-9');
  app.click('key-done');
  expect(sent(app)).toBeUndefined();
  app.click('key-erase');
  app.click('key-done');
  expect(sent(app)).toMatchObject({ type: 'set-latitude', degrees: -38 });
  await app.close();
});

test('a weather file is chosen, judged and named by its bad cells', async () => {
  const files = await open('weather-files', 'weather-files');
  files.click('weather-file');
  expect(sent(files)).toMatchObject({ type: 'weather-read', file: 'weather.csv' });
  await files.close();
  const order = await open('weather-order', 'weather-ready');
  order.click('order-day-first');
  expect(sent(order)).toMatchObject({ type: 'weather-judge', dateOrder: 'day-first' });
  await order.close();
  const ready = await open('weather-ready', 'weather-ready');
  expect(ready.text('weather-ready')).toContain('1 day is missing.');
  expect(ready.text('weather-fault')).toContain('Line 14, temperature C');
  await ready.close();
});

test('the curve runs through the days in their order, the foretold part from the last one measured', () => {
  const day = (larvae: number, known: Day['known'], rainMm = 0): Day => ({
    on: '2026-04-01',
    celsius: 20,
    rainMm,
    known,
    moist: false,
    larvae,
  });
  const curve = seasonCurve([
    day(0, 'measured'),
    day(0.5, 'measured', 20),
    day(1, 'old-forecast', 5),
    day(0.25, 'forecast'),
  ]);
  expect(curve.measured).toBe('5,100.00 15,50.00');
  expect(curve.foretold).toBe('15,50.00 25,0.00 35,75.00');
  expect(curve.today).toBe(30);
  expect(curve.columns.map(({ rain }) => rain)).toEqual([0, 34, 8.5, 0]);
});

test('a little rain is not drawn as much', () => {
  const [column] = seasonCurve([
    { on: '2026-04-01', celsius: 20, rainMm: 1, known: 'measured', moist: false, larvae: 0 },
  ]).columns;
  expect(column?.rain).toBeCloseTo(3.4, 9);
});
