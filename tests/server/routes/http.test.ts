import { expect, test } from 'vitest';
import { demoCheck } from '../../../server/demo/demo-check.ts';
import { ChecksView } from '../../../shared/checks.ts';
import { TreatmentView } from '../../../shared/dose.ts';
import { KioskState } from '../../../shared/state.ts';
import { post, testApp } from '../make/test-app.ts';
import { bringToOffer, standingOffer } from '../make/test-barn.ts';

const headers = { host: 'localhost:4180' };

test('the state served is of the form the schema tells', async () => {
  const { app } = await testApp();
  const state = await app.inject({ url: '/api/state', headers });
  expect(KioskState.parse(state.json()).bootId).toBe('boot');
});

test('an offer is served with the values that outside checks read', async () => {
  const { app, test: barn } = await testApp();
  bringToOffer(barn);
  const { offer, platform, round } = (await app.inject({ url: '/api/state', headers })).json();
  expect(offer).toMatchObject({
    id: standingOffer(barn).id,
    animal: 'goat-1',
    volumeMl: 3.7,
    draws: 1,
    syringe: 'syringe-6-by-0.1',
    strengthMgPerMl: 49.453,
  });
  expect(offer.deliveredMgPerKg.low).toBeLessThan(offer.deliveredMgPerKg.value);
  expect(platform).toMatchObject({ link: 'ready', live: 15_400, held: 15_400, verdict: 'held' });
  expect(round.step).toBe('offered');
});

test('a treatment is served once, as it was shown', async () => {
  const { app, test: barn } = await testApp();
  const offerId = bringToOffer(barn);
  const give = { type: 'give', id: 'g1', offerId, outcome: 'whole' };
  expect((await post(app, give)).json()).toEqual({ ok: true, id: 'g1', repeated: false });
  expect((await post(app, give)).json()).toEqual({ ok: true, id: 'g1', repeated: true });
  const rows = (await app.inject({ url: '/api/treatments', headers })).json();
  expect(rows).toHaveLength(1);
  expect(TreatmentView.parse(rows[0])).toMatchObject({
    sequence: 1,
    volumeMl: 3.7,
    by: 'Wren',
    provisional: false,
  });
});

test.each([
  ['not JSON at all', '{', 400, 'bad-input'],
  ['no object', 7, 400, 'unknown-intent'],
  ['an unknown type', { type: 'dance', id: 'x' }, 400, 'unknown-intent'],
  ['no id', { type: 'next' }, 400, 'bad-input'],
  ['a field nobody knows', { type: 'next', id: 'x', extra: 1 }, 400, 'bad-input'],
  ['not a number', '{"type":"mix-water","id":"x","celsius":NaN}', 400, 'bad-input'],
  ['a number as text', { type: 'mix-water', id: 'x', celsius: '20' }, 400, 'bad-input'],
  [
    'a negative volume',
    { type: 'correct', id: 'x', treatmentId: 't', what: { kind: 'wrong-volume', volumeMl: -1 } },
    400,
    'bad-input',
  ],
  [
    'a negative weight',
    { type: 'tray', id: 'x', action: { do: 'lead-on', animalId: 'a', grams: -5, grade: 'calm' } },
    400,
    'bad-input',
  ],
  ['a wrong unit', { type: 'set-weight-unit', id: 'x', unit: 'stone' }, 400, 'bad-input'],
  ['a wrong state', { type: 'mix-poured', id: 'x' }, 409, 'wrong-state'],
  ['a body too large', { type: 'next', id: 'x'.repeat(80_000) }, 413, 'bad-input'],
])('%s is refused with a code and a sentence, and nothing is written', async (_what, body, status, code) => {
  const { app, test: barn } = await testApp();
  const writes = barn.store.handled.writes();
  const response = await post(app, body);
  expect(response.statusCode).toBe(status);
  expect(response.json()).toMatchObject({ ok: false, code });
  expect(response.json().message.length).toBeGreaterThan(10);
  expect(barn.store.handled.writes()).toBe(writes);
});

test('without a readable configuration every intent is refused and the state says what to mend', async () => {
  const problem = {
    code: 'config-invalid',
    file: '/x/kiosk.json',
    field: 'panel',
    detail: 'd',
    remedy: 'r',
  } as const;
  const { app } = await testApp(problem);
  expect((await post(app, { type: 'safety-read', id: 'x' })).json()).toMatchObject({
    code: 'not-configured',
  });
  expect((await app.inject({ url: '/api/state', headers })).json().problem).toEqual(problem);
  expect((await app.inject({ url: '/api/health', headers })).json().ok).toBe(false);
});

test('the checks are served newest first, in the form the schema tells', async () => {
  const { app, test: barn } = await testApp();
  const add = (id: string, atMs: number): void =>
    barn.store.scaleChecks.add(demoCheck(id === 'b' ? 'bench' : 'platform', id, atMs));
  add('a', Date.UTC(2026, 3, 1));
  add('b', Date.UTC(2026, 3, 2));
  add('c', Date.UTC(2026, 3, 3));
  const checks = ChecksView.parse((await app.inject({ url: '/api/checks', headers })).json());
  // The barn of the test begins with a platform that was checked.
  expect(checks.scales.map(({ id }) => id)).toEqual(['c', 'b', 'a', 'check-1']);
  expect(checks.scales[0]).toMatchObject({
    role: 'platform',
    verdict: 'passed',
    at: '2026-04-03T00:00:00.000Z',
  });
  expect(checks.syringes).toEqual([]);
});

test('the schema served describes intents, state and treatments', async () => {
  const { app } = await testApp();
  const schema = (await app.inject({ url: '/api/schema', headers })).json();
  expect(JSON.stringify(schema.intent)).toContain('"give"');
  expect(schema.state.properties.platform.properties).toHaveProperty('uncertainty');
  expect(schema.treatment.properties).toHaveProperty('deliveredMgPerKg');
  expect(schema.checks.properties.syringes.items.properties).toHaveProperty('forgotten');
});

test.each([
  ['another name', { host: 'evil.example' }, 421],
  ['another site', { host: 'localhost:4180', origin: 'http://evil.example' }, 403],
  ['this page', { host: 'localhost:4180', origin: 'http://localhost:4180' }, 200],
])('a request by %s is answered %s', async (_by, from, status) => {
  const { app } = await testApp();
  expect((await app.inject({ url: '/api/health', headers: from })).statusCode).toBe(status);
});
