import { expect, test } from 'vitest';
import { EggCountsView } from '../../../shared/egg-count.ts';
import { PlanView, TestPage, TestsView } from '../../../shared/reduction-test.ts';
import { KioskState } from '../../../shared/state.ts';
import { post, testApp } from '../make/test-app.ts';
import { barnWithGoats, dose, FIFTY, wholeTest } from '../make/worm-test.ts';

const headers = { host: 'localhost:4180' };

test('counts, plan, tests and one test are served in the form the schema tells', async () => {
  const { barn, testId } = wholeTest([30, 40, 35, 28, 44, 39], [9, 12, 8, 10, 15, 6]);
  const { app } = await testApp(null, barn);
  const get = async (url: string) => (await app.inject({ url, headers })).json();
  expect(EggCountsView.parse(await get('/api/egg-counts')).counts).toHaveLength(12);
  expect(PlanView.parse(await get('/api/reduction-plan'))).toEqual({ rounds: [] });
  expect(TestsView.parse(await get('/api/reduction-tests')).tests).toMatchObject([
    { id: testId, medicine: 'Levamisole', step: 'done', verdict: 'resistant' },
  ]);
  const page = TestPage.parse(await get(`/api/reduction-tests/${testId}`));
  expect(page.animals[0]).toEqual({ id: 'g-1', name: 'G1', treated: true, before: 30, after: 9 });
  const { wormCheck } = KioskState.parse(await get('/api/state'));
  expect(wormCheck).toMatchObject({ open: 0, due: 0, revision: 13, failed: [{ verdict: 'resistant' }] });
});

test('an unknown test is told so, with where to look', async () => {
  const { app } = await testApp();
  const answer = await app.inject({ url: '/api/reduction-tests/none', headers });
  expect(answer.statusCode).toBe(404);
  expect(answer.json().message).toContain('/api/reduction-tests');
});

test('a whole test goes over HTTP: planned, counted, and a slide that cannot be is refused', async () => {
  const { barn, ids } = barnWithGoats(2);
  for (const id of ids) dose(barn, id);
  const { app } = await testApp(null, barn);
  const get = async (url: string) => (await app.inject({ url, headers })).json();
  const plan = { type: 'plan-test', medicineId: 'levamisole', species: 'goat', design: 'paired' } as const;
  const chosen = { protocol: 'clinical', method: FIFTY, treated: ids, untreated: [] } as const;
  expect((await post(app, { ...plan, ...chosen, id: 'p' })).json()).toMatchObject({ ok: true });
  const [{ id: testId }] = (await get('/api/reduction-tests')).tests;
  const count = (method: unknown, id: string) =>
    post(app, {
      type: 'log-egg-count',
      id,
      animalIds: ['g-1'],
      eggs: 40,
      method,
      takenOn: null,
      why: { for: 'test', testId, stage: 'before' },
    });
  const impossible = { kind: 'slide', dungGrams: 2, suspensionMl: 10, countedMl: 11 };
  expect((await count(impossible, 'c1')).json()).toMatchObject({ ok: false, code: 'bad-input' });
  expect((await count(FIFTY, 'c2')).json()).toMatchObject({ ok: true });
  expect((await get(`/api/reduction-tests/${testId}`)).animals[0]).toMatchObject({ before: 40, after: null });
});
