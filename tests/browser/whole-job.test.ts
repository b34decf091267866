import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import ICAL from 'ical.js';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DAY_MS } from '../../core/moment.ts';
import { createHerdFile } from '../../server/herd/herd-file.ts';
import { testApp } from '../server/make/test-app.ts';
import { furnishShed, type TestBarn, testBarn } from '../server/make/test-barn.ts';
import { CHROMIUM, type KioskPage, openKiosk } from './kiosk-page.ts';

const hasBrowser = existsSync(CHROMIUM);
const GOATS = ['Comfrey', 'Yarrow', 'Tansy', 'Mallow', 'Burdock', 'Chervil'];
/** Pale eyes: these are to be treated. */
const PALE = ['Comfrey', 'Yarrow', 'Tansy', 'Mallow', 'Burdock'];
const folder = mkdtempSync(join(tmpdir(), 'whole-job-'));
let barn: TestBarn;
let base: string;
let kiosk: KioskPage;
let close: () => Promise<unknown>;

const tagOf = (name: string) => `99800000000020${GOATS.indexOf(name)}`.padEnd(15, '0');
const idOf = (name: string) => barn.barn.context.memory.animals.find((each) => each.name === name)?.id ?? '';

beforeAll(async () => {
  if (!hasBrowser) return;
  const rows = GOATS.map((name) => `${name},goat,female,${tagOf(name)},15.2,2027-04-01`);
  writeFileSync(
    join(folder, 'herd.csv'),
    ['name,species,class,tag,weight kg,weighed', ...rows, 'Sorrel,goat,female,,15,2027-02-30'].join('\n'),
  );
  barn = testBarn(':memory:', furnishShed, {
    herdFile: createHerdFile({
      folder,
      now: () => barn.clock.wallMs,
      newId: () => crypto.randomUUID(),
      changed: () => barn.barn.changed(),
      log: (message) => barn.failures.push(message),
    }),
  });
  barn.send({ type: 'safety-read' });
  barn.send({ type: 'take-jug', jugId: 'jug-1' });
  barn.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  const { app } = await testApp(null, barn, join(process.cwd(), 'dist/kiosk'));
  close = () => app.close();
  base = await app.listen({ port: 0, host: '127.0.0.1' });
  kiosk = await openKiosk(base);
});

afterAll(async () => {
  await kiosk?.close();
  await close?.();
  rmSync(folder, { recursive: true, force: true });
});

async function shows(testId: string, text: string | RegExp): Promise<void> {
  await expect.poll(() => kiosk.text(testId).catch(() => 'not there'), { timeout: 15_000 }).toMatch(text);
}

/** Opens the page anew at a screen. */
async function at(screen: string): Promise<void> {
  await kiosk.page.goto(`${base}/#${screen}`);
  await kiosk.page.reload();
}

/** Stands before the doors of home again. */
async function home(): Promise<void> {
  await at('home');
  await kiosk.page.getByTestId('door-worm-check').waitFor();
}

/** Feeds the platform while the page looks on. */
function stand(grams: number, ms: number): void {
  barn.weigh(grams, ms);
  barn.barn.changed();
}

/** Enters what was counted of each goat by its tile and the keypad. */
async function count(eggs: Readonly<Record<string, number>>): Promise<void> {
  for (const [name, seen] of Object.entries(eggs)) {
    await kiosk.tap('sample-tile', `[data-animal="${idOf(name)}"]`);
    for (const digit of String(seen)) await kiosk.tap(`key-${digit}`);
    await kiosk.tap('key-done');
    await expect
      .poll(() => barn.barn.context.memory.eggCounts.at(-1)?.record, { timeout: 10_000 })
      .toMatchObject({ animalIds: [idOf(name)], eggs: seen });
  }
}

test.runIf(hasBrowser)(
  'a herd comes in by its file: the bad row is named, the rest by one press',
  async () => {
    await kiosk.tap('door-animals');
    await kiosk.tap('import');
    await kiosk.tap('import-file');
    await shows('import-fault', /8/);
    expect(barn.barn.context.memory.animals).toEqual([]);
    await kiosk.press('import-accept', 900);
    // The finger that held must be gone for a moment before a tap counts.
    await kiosk.page.waitForTimeout(500);
    await kiosk.tap('import-done');
    await kiosk.page.getByTestId('animals').waitFor();
    expect(barn.barn.context.memory.animals.map(({ name }) => name).sort()).toEqual([...GOATS].sort());
  },
);

test.runIf(hasBrowser)(
  'each animal is scored by a tap a sign, and whom to treat is told with the share left',
  async () => {
    await home();
    await kiosk.tap('door-worm-check');
    await kiosk.tap('worm-scores');
    for (const name of GOATS) {
      await kiosk.tap('animal-tile', `[data-animal="${idOf(name)}"]`);
      await kiosk.tap('sign-eyelid');
      await kiosk.tap(`step-${PALE.includes(name) ? 4 : 1}`);
      await kiosk.tap('sign-body');
      await kiosk.tap('step-3');
      await kiosk.tap('log-scores');
      await expect.poll(() => barn.barn.context.memory.scores.get(idOf(name))?.length).toBe(1);
    }
    await kiosk.page.getByTestId('scores').waitFor();
    await home();
    await kiosk.tap('door-worm-check');
    await kiosk.tap('worm-whom');
    await shows('share-left', /17 %/);
    const advised = kiosk.page.locator('[data-testid="whom-row"][data-advice="treat"]');
    await expect.poll(() => advised.count()).toBeGreaterThan(0);
    const first = (await advised.allInnerTexts()).join(' ');
    expect(PALE.some((name) => first.includes(name))).toBe(true);
    expect(first).not.toContain('Chervil');
  },
);

test.runIf(hasBrowser)('the round doses those to treat, each by a deliberate press', async () => {
  await at('platform');
  for (const name of PALE) {
    stand(0, 1500);
    barn.send({ type: 'read-tag', tag: tagOf(name) });
    stand(15_400, 4000);
    for (const caution of cautionsAsked()) barn.send({ type: 'accept', code: caution });
    await shows('animal-name', name);
    await kiosk.page.getByTestId('give').waitFor();
    await kiosk.page.waitForTimeout(300);
    await kiosk.press('give', 600);
    await shows('logged-volume', /mL/);
    await kiosk.tap('next');
  }
  stand(0, 1500);
  expect(barn.barn.context.memory.recent).toHaveLength(PALE.length);
});

test.runIf(hasBrowser)('the register prints, and the dates go into a calendar', async () => {
  const register = await (await fetch(`${base}/print/register`)).text();
  for (const name of PALE) expect(register).toContain(name);
  const csv = await (await fetch(`${base}/api/exports/register`)).text();
  const lines: Record<string, string>[] = parse(csv, { columns: true, bom: true });
  expect(lines.map((line) => line['animal']).sort()).toEqual([...PALE].sort());
  const calendar = new ICAL.Component(ICAL.parse(await (await fetch(`${base}/api/exports/calendar`)).text()));
  const said = calendar
    .getAllSubcomponents('vevent')
    .map((event) => String(event.getFirstPropertyValue('summary')));
  for (const name of PALE) expect(said.some((summary) => summary.includes(name))).toBe(true);
});

test.runIf(hasBrowser)(
  'counts of two weeks later tell, with an interval, whether the drench works',
  async () => {
    await home();
    await kiosk.tap('door-worm-check');
    await kiosk.tap('worm-tests');
    await kiosk.tap('plan-test');
    await kiosk.tap('method', '[data-factor="50"]');
    await kiosk.tap('design-paired');
    await kiosk.tap('plan-it');
    await kiosk.tap('test-row');
    await kiosk.tap('stage-before');
    await count({ Comfrey: 42, Yarrow: 55, Tansy: 38, Mallow: 61, Burdock: 47 });
    await kiosk.tap('back');
    barn.clock.pass(12 * DAY_MS);
    barn.barn.changed();
    await shows('test-step', 'SAMPLE NOW');
    await kiosk.tap('stage-after');
    await count({ Comfrey: 0, Yarrow: 0, Tansy: 0, Mallow: 1, Burdock: 0 });
    await kiosk.tap('back');
    await shows('verdict', 'SUSCEPTIBLE');
    // 1 - 1/243
    await shows('efficacy', /99\.6 % fewer eggs/);
    await shows('efficacy-limits', /^9\d % to 100 %/);
    expect(kiosk.complaints).toEqual([]);
  },
  240_000,
);

/** What the kiosk asks about before it offers the dose that stands next. */
function cautionsAsked() {
  const { phase } = barn.barn.context.memory.round;
  return phase.step === 'cautions'
    ? phase.decision.cautions.filter(({ strength }) => strength === 'ask').map(({ code }) => code)
    : [];
}
