import { mkdtempSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { newcomer } from '../../../core/herd/herd-animal.ts';
import { DAY_MS, HOUR_MS } from '../../../core/moment.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { bodyConditionFrom, eyelidFrom } from '../../../core/worms/scores.ts';
import { KioskConfig } from '../../../server/config/kiosk-config.ts';
import type { Store } from '../../../server/store/store.ts';
import { makeAnimal } from '../../core/make/animal.ts';
import { makeJug } from '../../core/make/jug.ts';
import { faultsOf } from '../../oracles/ade/judge.ts';
import { given } from '../make/book.ts';
import { testApp } from '../make/test-app.ts';
import { testBarn } from '../make/test-barn.ts';

/** Noon of the day the test clock stands at. */
const NOON = Date.UTC(2027, 3, 12, 12);
/** What a spreadsheet would run, what no ASCII has, and what breaks a line. */
const NASTY = '=HYPERLINK("x","🐐"), \r\n"Ütz"';
const HUGE = `+${'🐐'.repeat(2_500_000)}`;

/** A farm whose names are as bad as names can be, with doses, corrections, weights and scores of two days. */
function farm(nameOf: (id: string) => string = (id) => (id === 'anna' ? NASTY : id)) {
  return testBarn(':memory:', (store) => furnish(store, nameOf), {
    config: KioskConfig.parse({ people: ['Wren'], timeZone: 'Europe/Dublin' }),
  });
}

function furnish(store: Store, nameOf: (id: string) => string): void {
  for (const [id, tag] of [
    ['anna', '840003123456789'],
    ['bella', null],
  ] as const)
    store.animals.add(
      newcomer(makeAnimal({ id, tag, name: nameOf(id), lastWeight: null, inMilk: true })),
      'Wren',
    );
  store.jugs.add(makeJug({ mixedAtMs: NOON - HOUR_MS, useByMs: NOON + 11 * HOUR_MS }));
  const days = (count: number) =>
    ({ kind: 'days', days: count, evidence: 'primary', source: 'a source of a test' }) as const;
  const dose = (id: string, animal: string, atMs: number) => {
    const clear = (count: number) => ({ kind: 'at', atMs: atMs + count * DAY_MS }) as const;
    const treatment = given({
      id,
      animal,
      atMs,
      by: '@Kim',
      meat: days(9),
      milk: days(4),
      clear: { meat: clear(9), milk: clear(4) },
    });
    const { offer } = treatment;
    const named = {
      ...offer.animal,
      name: nameOf(animal),
      tag: animal === 'anna' ? '840003123456789' : null,
    };
    store.dayBook.addTreatment({ ...treatment, offer: { ...offer, animal: named } });
  };
  dose('t-1', 'anna', NOON - 2 * DAY_MS);
  dose('t-2', 'bella', NOON - HOUR_MS);
  dose('t-3', 'anna', NOON - HOUR_MS / 2);
  const beside = { atMs: NOON, by: 'Wren' };
  store.dayBook.addCorrection({ ...beside, id: 'c-1', treatmentId: 't-2', what: { kind: 'not-given' } });
  store.dayBook.addCorrection({
    ...beside,
    id: 'c-2',
    treatmentId: 't-1',
    what: { kind: 'vet-time', meat: { unit: 'days', count: 30 }, milk: null },
  });
  const weighing = { uncertainty: null, hoursOffFeed: null } as const;
  store.weighings.add(
    'anna',
    { ...weighing, mass: grams(40_000), atMs: NOON - 3 * DAY_MS, method: 'girth' },
    'Wren',
  );
  store.weighings.add('bella', { ...weighing, mass: grams(1e-7), atMs: NOON, method: 'imported' }, '');
  const seen = { atMs: NOON, by: 'Wren', soiling: null, jaw: null, coat: null };
  store.scores.add({ ...seen, animalId: 'anna', eyelid: eyelidFrom(3), body: bodyConditionFrom(2.5) });
  store.scores.add({ ...seen, animalId: 'bella', eyelid: eyelidFrom(4), body: null });
}

async function take(path: string, barn = farm()) {
  const { app } = await testApp(null, barn);
  return app.inject({ method: 'GET', url: `/api/exports/${path}`, headers: { host: 'localhost:4180' } });
}

describe('the register', () => {
  test('is read back as it was written, with corrections and the clear times in force', async () => {
    const answer = await take('register');
    expect(answer.headers).toMatchObject({
      'content-type': 'text/csv; charset=utf-8; header=present',
      'content-disposition': 'attachment; filename="byreside-register-all.csv"',
    });
    const rows = parse(answer.body, { columns: true }) as Record<string, string>[];
    expect(rows.map(({ treatment }) => treatment)).toEqual(['t-1', 't-2', 't-3']);
    expect(rows[0]).toMatchObject({
      animal: `'${NASTY}`,
      'given by': `'@Kim`,
      corrections: 'veterinarian: meat 30 days, milk nothing said (Wren)',
      'meat clear': new Date(NOON + 28 * DAY_MS).toISOString(),
      'milk clear': new Date(NOON + 2 * DAY_MS).toISOString(),
      'directed by': 'veterinarian',
    });
    expect(rows[1]).toMatchObject({ animal: 'bella', corrections: 'not given (Wren)' });
  });

  test.each([
    ['register?from=2027-04-12', ['t-2', 't-3']],
    ['register?to=2027-04-11', ['t-1']],
    ['register?from=2027-04-10&to=2027-04-10', ['t-1']],
    ['register?animal=bella', ['t-2']],
    ['register?animal=nobody', []],
    ['register?from=2031-01-01', []],
  ])('%s tells of what is asked, and always has its headings', async (path, ids) => {
    const { body } = await take(path);
    expect(
      (parse(body, { columns: true }) as Record<string, string>[]).map(({ treatment }) => treatment),
    ).toEqual(ids);
    expect(body).toMatch(/^treatment,given at,/);
  });

  test.each([
    'from=12.4.2027',
    'to=2027-02-30',
    'from=2027-13-01',
    'from=',
    'from=2027-04-12&to=2027-04-01',
    'from=1&from=2',
  ])('a bad day (%s) is refused with how to write one', async (query) => {
    const answer = await take(`register?${query}`);
    expect(answer.statusCode).toBe(400);
    expect(answer.json<{ message: string }>().message).toMatch(/2027-04-12|from is after to/);
  });

  test('a name of ten megabytes goes out whole and comes back the same', { timeout: 60_000 }, async () => {
    const { body } = await take(
      'register?to=2027-04-11',
      farm((id) => (id === 'anna' ? HUGE : id)),
    );
    const [row] = parse(body, { columns: true, max_record_size: 0 }) as Record<string, string>[];
    expect(row?.['animal']).toBe(`'${HUGE}`);
  });
});

describe('weights and scores as tables', () => {
  test('weights by themselves and by doses', async () => {
    const rows = parse((await take('weights?animal=anna')).body, { columns: true }) as Record<
      string,
      string
    >[];
    expect(rows.map((row) => [row['weight kg'], row['method'], row['treatment']])).toEqual([
      ['40', 'girth', ''],
      ['40', 'scale', 't-1'],
      ['40', 'scale', 't-3'],
    ]);
  });

  test('scores, each sign in its column', async () => {
    const rows = parse((await take('scores')).body, { columns: true }) as Record<string, string>[];
    expect(rows.map(({ eyelid, body }) => [eyelid, body])).toEqual([
      ['3', '2.5'],
      ['4', ''],
    ]);
  });
});

describe('events of the exchange standard', () => {
  test.each([
    ['treatment-events', 'TreatmentEvent', 3],
    ['weight-events', 'WeightEvent', 5],
    ['score-events', 'ConformationScoreEvent', 1],
  ])('%s stand up to its published schema', async (path, resource, count) => {
    const events = (await take(path)).json<Record<string, unknown>[]>();
    expect(events).toHaveLength(count);
    for (const event of events) expect(faultsOf(resource, event)).toEqual([]);
    expect(new Set(events.map(({ id }) => id)).size).toBe(count);
  });

  test('tell what was taken back as deleted, and the times the vet lengthened', async () => {
    const [first, second] = (await take('treatment-events')).json<
      { meta: object; withdrawals: object[]; animal: object }[]
    >();
    expect(first).toMatchObject({
      animal: { scheme: 'std.iso.11785', id: '840003123456789' },
      withdrawals: [
        { productType: 'Meat', endDate: '2027-05-10T12:00:00Z' },
        { productType: 'Milk', endDate: '2027-04-14T12:00:00Z' },
      ],
    });
    expect(second).toMatchObject({
      meta: { isDeleted: true },
      animal: { scheme: 'byreside.animal', id: 'bella' },
    });
  });

  test('are an empty list where there is nothing', async () => {
    expect((await take('treatment-events?animal=nobody')).json()).toEqual([]);
  });
});

test('the calendar is read back with clear times, the jug, the next dose, and no day that is over', async () => {
  const { body, headers } = await take('calendar');
  expect(headers['content-disposition']).toBe('attachment; filename="byreside-calendar.ics"');
  const component = new ICAL.Component(ICAL.parse(body));
  const events = component.getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));
  const of = (begin: string) => events.filter(({ uid }) => uid.startsWith(begin));
  expect(of('clear-meat-anna')[0]?.startDate.toJSDate().getTime()).toBe(NOON + 28 * DAY_MS);
  expect(of('clear-milk-anna')[0]?.summary).toContain('🐐');
  expect(of('clear-meat-bella')).toEqual([]);
  expect(of('use-by-jug-7')[0]?.startDate.toJSDate().getTime()).toBe(NOON + 11 * HOUR_MS);
  expect(of('again-levamisole')[0]?.description).toContain('🐐');
  expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
  for (const { startDate } of events) expect(startDate.toJSDate().getTime()).toBeGreaterThan(NOON - DAY_MS);
});

describe('a file for the memory stick', () => {
  async function write(folder: string | undefined, path = 'register') {
    const barn = farm();
    const { context } = barn.barn;
    context.config = { ...context.config, ...(folder === undefined ? {} : { exportFolder: folder }) };
    const { app } = await testApp(null, barn);
    return app.inject({ method: 'POST', url: `/api/exports/${path}`, headers: { host: 'localhost:4180' } });
  }

  test('stands in the folder whole, and nothing else', { timeout: 30_000 }, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'stick-'));
    const answer = await write(folder);
    expect(readdirSync(folder)).toEqual(['byreside-register-all.csv']);
    const file = join(folder, 'byreside-register-all.csv');
    expect(answer.json()).toEqual({ ok: true, file, bytes: statSync(file).size });
    expect(readFileSync(file, 'utf8')).toBe((await take('register')).body);
  });

  test.each([
    ['no folder is configured', undefined, 'no-folder'],
    ['the stick is not there', join(tmpdir(), 'no', 'such', 'stick'), 'not-there'],
  ])('is refused where %s', async (_, folder, why) => {
    const answer = await write(folder);
    expect(answer.statusCode).toBe(409);
    expect(answer.json()).toEqual({ ok: false, why });
  });
});

test('what there is not is told so, and without a network there is no address', async () => {
  expect((await take('everything')).statusCode).toBe(404);
  expect((await take('register/qr.svg')).statusCode).toBe(404);
  const { app } = await testApp(null, farm());
  const ways = await app.inject({ method: 'GET', url: '/api/exports', headers: { host: 'localhost:4180' } });
  expect(ways.json()).toEqual({ folder: null, address: null });
});
