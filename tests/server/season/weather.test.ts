import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../../core/moment.ts';
import { createWeatherImport } from '../../../server/season/weather-import.ts';
import { seasonView, weatherImportView } from '../../../server/view/season-view.ts';
import { type TestBarn, testBarn } from '../make/test-barn.ts';

/** The test barn's clock begins on 2027-04-12. */
const TODAY = Date.UTC(2027, 3, 12);
const HEADING = 'date,temperature C,rain mm';
const dateOf = (days: number): string => new Date(TODAY + days * DAY_MS).toISOString().slice(0, 10);

function csv(from: number, to: number, cells = '20,8'): string {
  const days = Array.from({ length: to - from + 1 }, (_, i) => `${dateOf(from + i)},${cells}`);
  return [HEADING, ...days].join('\n');
}

async function readIn(barn: TestBarn, text: string) {
  await barn.barn.context.weatherImport.take('weather.csv', Buffer.from(text), null);
  return weatherImportView(barn.barn.context, 0, 20).stage;
}

async function takeIn(barn: TestBarn, text: string) {
  const stage = await readIn(barn, text);
  if (stage.step !== 'ready') throw new Error(`the file is ${stage.step}`);
  return barn.send({ type: 'weather-accept', preview: stage.id });
}

const outlookOf = ({ barn }: TestBarn) => seasonView(barn.context).outlook;

describe('a weather file', () => {
  test('is a preview until one held press, then the days are there, also after a restart', async () => {
    const path = join(mkdtempSync(join(tmpdir(), 'weather-')), 'barn.db');
    const barn = testBarn(path);
    barn.send({ type: 'set-latitude', degrees: 48 });
    expect(await readIn(barn, csv(-40, 4))).toMatchObject({
      step: 'ready',
      days: 45,
      first: dateOf(-40),
      last: dateOf(4),
      missing: 0,
      faultCount: 0,
    });
    expect(outlookOf(barn)).toEqual({ kind: 'no-weather' });
    expect(await takeIn(barn, csv(-40, 4))).toMatchObject({ ok: true });
    expect(weatherImportView(barn.barn.context, 0, 1).stage).toMatchObject({ step: 'written', days: 45 });
    const before = outlookOf(barn);
    expect(before).toMatchObject({ kind: 'ready', suggestion: 'high', forecastDaysMissing: 0, measured: 28 });
    barn.store.close();
    const again = testBarn(path);
    expect(outlookOf(again)).toEqual(before);
    again.store.close();
  });

  test('names each bad cell by line and column, and the good days come in without it', async () => {
    const barn = testBarn();
    const text = [HEADING, `${dateOf(-3)},20,8`, `${dateOf(-2)},x,8`, `${dateOf(-1)},20,8`].join('\n');
    expect(await readIn(barn, text)).toMatchObject({
      days: 2,
      missing: 1,
      faults: [{ line: 3, column: 'temperature C', why: 'not-a-number' }],
    });
    expect(await takeIn(barn, text)).toMatchObject({ ok: true });
    expect(barn.store.weather.since(0).map(({ atMs }) => atMs)).toEqual([TODAY - 3 * DAY_MS, TODAY - DAY_MS]);
  });

  test('is asked what comes first in its dates, and judged by it', async () => {
    const barn = testBarn();
    const text = `${HEADING}\n1/4/2027,20,8\n2/4/2027,20,8`;
    expect(await readIn(barn, text)).toMatchObject({ asksOrder: true, days: 0 });
    expect(barn.send({ type: 'weather-judge', dateOrder: 'day-first' })).toMatchObject({ ok: true });
    expect(weatherImportView(barn.barn.context, 0, 20).stage).toMatchObject({
      asksOrder: false,
      days: 2,
      first: '2027-04-01',
    });
  });

  test.each([
    ['no weather file', 'name,species\nAnna,goat', 'no-such-columns'],
    ['empty', HEADING, 'empty'],
    ['torn', `${HEADING}\n"2027-04-01,20,8`, 'broken-quotes'],
  ])('that is %s is refused', async (_what, text, why) => {
    expect(await readIn(testBarn(), text)).toMatchObject({ step: 'refused', why });
  });

  test('without a good day is not taken in, nor is a preview that stands no more', async () => {
    const barn = testBarn();
    expect(await takeIn(barn, `${HEADING}\n${dateOf(-1)},x,8`)).toMatchObject({ code: 'nothing-to-take-in' });
    expect(barn.send({ type: 'weather-accept', preview: 'old' })).toMatchObject({ code: 'no-such-preview' });
    barn.send({ type: 'weather-drop' });
    expect(barn.send({ type: 'weather-judge', dateOrder: 'day-first' })).toMatchObject({
      code: 'no-such-preview',
    });
    expect(barn.store.weather.since(0)).toEqual([]);
  });

  test('is read out of the import folder, and none elsewhere', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'import-'));
    writeFileSync(join(folder, 'weather.csv'), csv(-2, 2));
    const weatherImport = createWeatherImport({
      folder,
      now: () => TODAY,
      newId: () => 'p1',
      changed: () => {},
      log: () => {},
    });
    expect(weatherImport.files().map(({ name }) => name)).toEqual(['weather.csv']);
    expect(weatherImport.read('../weather.csv', null)).toBe('no-such-file');
    expect(weatherImport.read('weather.csv', null)).toBeNull();
    await expect.poll(() => weatherImport.stage().step).toBe('ready');
  });
});

describe('the weather kept', () => {
  test('gives a forecast up for what was measured, and never the other way', async () => {
    const barn = testBarn();
    await takeIn(barn, csv(-1, 3, '20,8'));
    await takeIn(barn, csv(-1, 3, '10,0'));
    const kept = barn.store.weather.since(TODAY - DAY_MS);
    expect(kept.map(({ celsius, forecast }) => [celsius, forecast])).toEqual([
      [10, false],
      [10, true],
      [10, true],
      [10, true],
      [10, true],
    ]);
    barn.clock.pass(2 * DAY_MS);
    await takeIn(barn, csv(0, 1, '15,1'));
    barn.clock.pass(-2 * DAY_MS);
    await takeIn(barn, csv(0, 1, '30,9'));
    expect(barn.store.weather.since(TODAY).map(({ celsius }) => celsius)).toEqual([15, 15, 10, 10]);
  });

  test('says that a forecast was never replaced', async () => {
    const barn = testBarn();
    barn.send({ type: 'set-latitude', degrees: 48 });
    await takeIn(barn, csv(-40, 6));
    barn.clock.pass(3 * DAY_MS);
    expect(outlookOf(barn)).toMatchObject({ oldForecasts: 3, forecastDaysMissing: 0 });
  });
});

describe('the season', () => {
  test('is not told before the latitude is set', async () => {
    const barn = testBarn();
    await takeIn(barn, csv(-40, 4));
    expect(outlookOf(barn)).toEqual({ kind: 'no-latitude' });
    barn.send({ type: 'set-latitude', degrees: -38 });
    expect(seasonView(barn.barn.context)).toMatchObject({ latitude: -38, outlook: { kind: 'ready' } });
  });

  test('is the keeper’s to set: the weather only suggests', async () => {
    const barn = testBarn();
    barn.send({ type: 'set-latitude', degrees: 48 });
    await takeIn(barn, csv(-40, 4));
    barn.send({ type: 'set-worm-season', season: 'low' });
    expect(seasonView(barn.barn.context)).toMatchObject({ season: 'low', outlook: { suggestion: 'high' } });
    expect(barn.barn.context.memory.settings.wormSeason).toBe('low');
  });

  test('grows its revision with whatever it is told from', async () => {
    const barn = testBarn();
    const revision = () => barn.barn.context.memory.seasonRevision;
    const seen = [revision()];
    barn.send({ type: 'set-latitude', degrees: 48 });
    seen.push(revision());
    await takeIn(barn, csv(-2, 2));
    seen.push(revision());
    barn.send({ type: 'set-worm-season', season: 'low' });
    seen.push(revision());
    expect(seen).toEqual([0, 1, 2, 3]);
  });
});
