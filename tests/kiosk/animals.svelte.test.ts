import { expect, test, vi } from 'vitest';
import type { Intent } from '../../shared/intent.ts';
import { type MountedApp, mountApp } from './mount-app.ts';
import { openScene } from './open-scene.ts';
import { SCENES } from './preview/scenes.ts';
import { soon } from './soon.ts';

async function open(name: string): Promise<MountedApp> {
  const scene = SCENES.find((each) => each.name === name);
  if (scene === undefined) throw new Error(`there is no scene ${name}`);
  return openScene(scene);
}

function sent(app: MountedApp): Intent | undefined {
  return app.socket.intents.at(-1);
}

test('scores are logged by one tap a sign, in any order, and nothing not seen', async () => {
  const app = await open('animal-score');
  app.click('step-4');
  app.click('step-2.5');
  app.click('sign-jaw');
  app.click('step-swollen');
  app.click('log-scores');
  expect(sent(app)).toMatchObject({
    type: 'score',
    animalId: 'a1',
    scored: { eyelid: 4, body: 2.5, soiling: null, jaw: 'swollen', coat: null },
  });
  await app.close();
});

test('a score that was a slip is taken back by a hold, and nothing is offered to log meanwhile', async () => {
  const app = await open('animal-score-slip');
  expect(app.find('log-scores')).toBeNull();
  vi.useFakeTimers();
  app.press('take-score-back', 'pointerdown');
  app.press('take-score-back', 'pointerup');
  expect(app.socket.intents).toEqual([]);
  app.press('take-score-back', 'pointerdown');
  vi.advanceTimersByTime(600);
  vi.useRealTimers();
  expect(sent(app)).toMatchObject({
    type: 'take-back-score',
    animalId: 'a1',
    scoredAt: '2026-04-14T13:51:00Z',
  });
  await app.close();
});

test('once a sign is scored, the plate logs', async () => {
  const app = await open('animal-score-slip');
  app.click('step-4');
  expect(app.find('take-score-back')).toBeNull();
  app.click('log-scores');
  expect(sent(app)).toMatchObject({ type: 'score', animalId: 'a1' });
  await app.close();
});

test('the same step tapped again takes the score back', async () => {
  const app = await open('animal-score');
  app.click('step-4');
  app.click('sign-eyelid');
  app.click('step-4');
  expect(app.get('log-scores').hasAttribute('disabled')).toBe(true);
  await app.close();
});

test('a day is picked by steps and never after today', async () => {
  const app = await open('animal-bred');
  app.click('month-more');
  app.click('day-less');
  app.click('day-set');
  expect(sent(app)).toMatchObject({
    type: 'edit-animal',
    edit: { what: 'day', day: 'bred', on: '2026-02-11' },
  });
  await app.close();
});

test.each([
  ['animal-edit', ['edit-milk'], { type: 'edit-animal', edit: { what: 'milk', inMilk: false } }],
  ['animal-class', ['pick-castrate'], { type: 'edit-animal', edit: { what: 'class', class: 'castrate' } }],
  ['animal-mark', ['pick-blue'], { type: 'edit-animal', edit: { what: 'mark', mark: 'blue' } }],
  ['animal-mark', ['pick-none'], { type: 'edit-animal', edit: { what: 'mark', mark: null } }],
  [
    'animal-pen',
    ['pick-other', 'key-1', 'key-2', 'key-done'],
    { type: 'edit-animal', edit: { what: 'pen', pen: '12' } },
  ],
  ['animal-tag-read', ['retag-use'], { type: 'retag', tag: '982000123456999' }],
  ['animal-tag', ['retag-visual', 'key-7', 'key-done'], { type: 'retag-visual', lost: '12', fresh: '7' }],
  ['animal-note', ['note-lame'], { type: 'note-animal', note: 'lame' }],
] as const)('on %s the taps %j are sent', async (scene, taps, intent) => {
  const app = await open(scene);
  for (const tap of taps) app.click(tap);
  expect(sent(app)).toMatchObject({ ...intent, animalId: 'a1' });
  await app.close();
});

test('the season is turned and a mean of eggs entered on the list of whom to treat', async () => {
  const app = await open('whom');
  await soon(() => app.get('worm-season'));
  app.click('worm-season');
  expect(sent(app)).toMatchObject({ type: 'set-worm-season', season: 'low' });
  app.click('egg-count');
  app.click('enter-mean');
  for (const key of ['key-3', 'key-5', 'key-0', 'key-done']) app.click(key);
  expect(sent(app)).toMatchObject({ type: 'set-egg-mean', eggsPerGram: 350 });
  await app.close();
});

test('what was kept anew is asked for again', async () => {
  const app = await open('animal');
  await soon(() => app.get('animal-scores'));
  const asked = vi.mocked(fetch);
  const before = asked.mock.calls.length;
  app.patch({ herdRevision: 1 });
  await soon(() => expect(asked.mock.calls.length).toBeGreaterThan(before));
  await app.close();
});

test('a server that does not answer is told, and asked again', async () => {
  const scene = SCENES.find((each) => each.name === 'animal');
  const app = mountApp(scene?.state ?? null, 'animals/a1', {});
  await soon(() => app.get('animal-failed'));
  expect(app.text('animal-failed')).toContain('does not answer');
  await app.close();
});

test('scored from the worm check, one animal after the other', async () => {
  const app = await open('worm-doors');
  app.click('worm-scores');
  const [first] = document.querySelectorAll<HTMLElement>('[data-testid="animal-tile"]');
  expect(first?.dataset['animal']).not.toBe('a1');
  app.get('animal-tile').click();
  await soon(() => app.click('step-4'));
  app.click('log-scores');
  expect(sent(app)).toMatchObject({ type: 'score', animalId: first?.dataset['animal'] });
  app.get('scores');
  await app.close();
});

test('a threshold is changed by a tap, on a word that is named, for one class or for all', async () => {
  const app = await open('worm-rule-word');
  app.click('word-veterinarian');
  expect(sent(app)).toMatchObject({
    type: 'set-worm-rule',
    rule: 'treatEyelid',
    season: 'high',
    class: 'young',
    value: 3,
    word: 'veterinarian',
  });
  await app.close();
  const forAll = await open('worm-rule-word');
  forAll.click('word-farm-all');
  expect(sent(forAll)).toMatchObject({ season: null, class: null, value: 3, word: 'farm' });
  await forAll.close();
});

test('a threshold keyed out of its bounds is not taken, and the bounds are shown', async () => {
  const app = await open('worm-rule-keys');
  for (const key of ['key-9', 'key-9', 'key-9', 'key-done']) app.click(key);
  expect(app.get('set-worm-rule').textContent).toContain('From 10 to 120');
  for (const key of ['key-8', 'key-0', 'key-done', 'word-farm']) app.click(key);
  expect(sent(app)).toMatchObject({ rule: 'gainShare', value: 0.8, word: 'farm' });
  await app.close();
});

test('a threshold goes back to what ships by one tap', async () => {
  const app = await open('worm-rule-set');
  app.click('rule-shipped');
  expect(sent(app)).toMatchObject({ rule: 'treatBody', value: null });
  await app.close();
});

test('a weight hard to believe is opened from the chart, and said to be right', async () => {
  const app = await open('animal-growth');
  await soon(() => app.get('growth-chart'));
  for (const tap of ['chart-later', 'chart-earlier', 'chart-earlier', 'chart-earlier']) app.click(tap);
  expect(app.get('chart-told').textContent).toContain('20 Mar 2026');
  app.click('chart-earlier');
  expect(app.get('chart-open').textContent).toContain('pounds read as kilograms?');
  app.click('chart-open');
  app.click('weight-true');
  expect(sent(app)).toMatchObject({ type: 'say-weight', animalId: 'a1', said: 'true' });
  await app.close();
});

test('hours off feed are keyed, for the weight or for the round', async () => {
  const app = await open('animal-weight-feed');
  app.click('feed-round');
  expect(sent(app)).toMatchObject({ type: 'weight-off-feed', hours: 12, round: true });
  await app.close();
});

test('a lost tag read again at the platform is answered by one tap, and nobody is named before', async () => {
  const app = await open('visit-lost-tag');
  expect(app.get('lost-tag').textContent).toContain('lost by Clover');
  app.click('lost-tag');
  expect(sent(app)).toMatchObject({ type: 'pick-animal', animalId: 'a1' });
  await app.close();
});

test('of two animals that carry one number the kiosk asks which, before either is taken', async () => {
  const app = await open('which-of-two');
  expect(sent(app)).toBeUndefined();
  const tiles = [...app.get('which-of-two').querySelectorAll<HTMLElement>('[data-testid="animal-tile"]')];
  expect(tiles.map(({ dataset }) => dataset['animal'])).toEqual(['a1', 'a2']);
  tiles[1]?.click();
  expect(sent(app)).toMatchObject({ type: 'pick-animal', animalId: 'a2' });
  await app.close();
});
