import { flushSync } from 'svelte';
import { describe, expect, test } from 'vitest';
import type { Intent } from '../../shared/intent.ts';
import type { MountedApp } from './mount-app.ts';
import { openScene } from './open-scene.ts';
import { SCENES } from './preview/scenes.ts';
import { soon } from './soon.ts';

async function open(name: string): Promise<MountedApp> {
  const scene = SCENES.find((each) => each.name === name);
  if (scene === undefined) throw new Error(`there is no scene ${name}`);
  return openScene(scene);
}
const sent = (app: MountedApp): Intent | undefined => app.socket.intents.at(-1);

function tile(animal: string): void {
  const found = document.querySelector<HTMLElement>(`[data-testid="sample-tile"][data-animal="${animal}"]`);
  if (found === null) throw new Error(`no tile of ${animal}`);
  found.click();
  flushSync();
}
function keys(app: MountedApp, digits: string): void {
  for (const digit of digits) app.click(digit === '.' ? 'key-point' : `key-${digit}`);
  app.click('key-done');
}

describe('egg counts', () => {
  test('are entered one number a screen, the next animal by its tile', async () => {
    const app = await open('eggs');
    app.click('count-samples');
    app.click('count-go-on');
    tile('a1');
    keys(app, '17');
    const method = { kind: 'slide', dungGrams: 4, suspensionMl: 60, countedMl: 0.3 };
    const why = { for: 'look', purpose: 'herd' };
    expect(sent(app)).toMatchObject({
      type: 'log-egg-count',
      animalIds: ['a1'],
      eggs: 17,
      method,
      takenOn: null,
      why,
    });
    tile('a3');
    keys(app, '0');
    expect(sent(app)).toMatchObject({ animalIds: ['a3'], eggs: 0, method });
    await app.close();
  });

  test('of a mixed sample name all that are in it', async () => {
    const app = await open('eggs-whose');
    app.click('mixed');
    for (const id of ['a1', 'a2', 'a3', 'a2']) tile(id);
    app.click('count-mixed');
    keys(app, '9');
    expect(sent(app)).toMatchObject({ type: 'log-egg-count', animalIds: ['a1', 'a3'], eggs: 9 });
    await app.close();
  });

  test('keep the slide by its figures, what it was for and the day', async () => {
    const app = await open('eggs-method');
    app.click('method-slide');
    keys(app, '2.5');
    keys(app, '50');
    keys(app, '51');
    keys(app, '0.45');
    app.click('set-why');
    app.click('choose-ill');
    app.click('set-day');
    app.click('choose-yesterday');
    app.click('count-go-on');
    tile('a2');
    keys(app, '3');
    expect(sent(app)).toMatchObject({
      method: { kind: 'slide', dungGrams: 2.5, suspensionMl: 50, countedMl: 0.45 },
      takenOn: '2026-04-13',
      why: { for: 'look', purpose: 'ill' },
    });
    await app.close();
  });

  test('by a told factor', async () => {
    const app = await open('eggs-method');
    app.click('method-told');
    keys(app, '16.7');
    app.click('count-go-on');
    tile('a1');
    keys(app, '2');
    expect(sent(app)).toMatchObject({ method: { kind: 'told', factor: 16.7 } });
    await app.close();
  });

  test('are corrected by another number beside the first', async () => {
    const app = await open('eggs-one');
    app.click('egg-other-number');
    keys(app, '12');
    expect(sent(app)).toMatchObject({
      type: 'correct-egg-count',
      countId: 'c5',
      what: { kind: 'other-number', eggs: 12 },
    });
    await app.close();
  });

  test('give way to a mean entered, which is taken back by one tap', async () => {
    const app = await open('whom-eggs');
    app.click('use-counts');
    expect(sent(app)).toMatchObject({ type: 'set-egg-mean', eggsPerGram: null });
    await app.close();
  });
});

describe('a test', () => {
  test('is planned of the round: method, design, whom; those asked for are chosen already', async () => {
    const app = await open('test-plan-who');
    expect(app.text('test-need')).toContain('8 animals, 64 eggs');
    tile('a8');
    app.click('plan-it');
    expect(sent(app)).toMatchObject({
      type: 'plan-test',
      medicineId: 'levamisole',
      species: 'goat',
      design: 'paired',
      protocol: 'clinical',
      method: { kind: 'slide', dungGrams: 2, suspensionMl: 60, countedMl: 0.3 },
      treated: ['a1', 'a2', 'a3', 'a4', 'a7'],
      untreated: [],
    });
    await app.close();
  });

  test('says to count finer where too few eggs are expected', async () => {
    const app = await open('test-plan-finer');
    expect(app.text('test-need')).toContain('count finer');
    await app.close();
  });

  test('unpaired takes untreated ones beside the treated', async () => {
    const app = await open('test-plan-untreated');
    app.click('plan-it');
    expect(sent(app)).toMatchObject({ type: 'plan-test', design: 'unpaired', untreated: ['a6', 'a7'] });
    await app.close();
  });

  test('takes its second counts by keypad, dated today, and its first of the day of the dose', async () => {
    const app = await open('test-due');
    app.click('stage-after');
    tile('a5');
    keys(app, '4');
    expect(sent(app)).toMatchObject({
      type: 'log-egg-count',
      animalIds: ['a5'],
      eggs: 4,
      takenOn: null,
      why: { for: 'test', testId: 't2', stage: 'after' },
    });
    await app.close();
    const before = await open('test-begun');
    before.click('stage-before');
    tile('a5');
    keys(before, '31');
    expect(sent(before)).toMatchObject({
      takenOn: '2026-03-30',
      why: { for: 'test', testId: 't3', stage: 'before' },
    });
    await before.close();
  });

  test('tells its verdict with efficacy and limits, and why in one tap', async () => {
    const app = await open('test-result');
    expect(app.text('verdict')).toBe('RESISTANT');
    expect(app.text('efficacy')).toBe('92.3 % fewer eggs');
    expect(app.text('efficacy-limits')).toBe('88.6 % to 95.4 % (90 %)');
    app.click('test-why');
    const lines = [...document.querySelectorAll<HTMLElement>('[data-testid="why-line"]')];
    expect(lines.map((line) => line.dataset['line'])).toEqual(['method', 'rule', 'controlled', 'dropped']);
    app.click('page-after');
    expect(document.querySelector('[data-line="dose-short"]')?.textContent).toContain('2 × dose');
    await app.close();
  });

  test('with more eggs after than before says so, and clamps nothing', async () => {
    const app = await open('test-result-worse');
    expect(app.text('efficacy')).toBe('56.6 % MORE eggs');
    expect(app.text('efficacy-limits')).toBe('−115.6 % to 91.2 % (90 %)');
    expect(app.text('extreme-care')).toContain('Fewer than 5 animals');
    await app.close();
  });
});

test('what is due stands on Home, and its door leads there', async () => {
  const app = await open('home-test-due');
  expect(app.text('door-worm-check')).toContain('2 tests due');
  app.click('door-worm-check');
  await soon(() => app.get('worm-tests'));
  expect(app.text('worm-tests')).toContain('2 tests due');
  await app.close();
});

test('a medicine that failed is asked about with day and efficacy, and marked where it is picked', async () => {
  const app = await open('failed-caution');
  expect(app.text('caution')).toContain('test of 13 Apr 2026');
  expect(app.text('caution')).toContain('92.3 % fewer eggs');
  await app.close();
  const jug = await open('failed-jug');
  expect(jug.text('failed-test')).toBe('resistant: goat');
  await jug.close();
  const rule = await open('failed-rule');
  expect(rule.text('figure')).toContain('RESISTANT');
  await rule.close();
});
