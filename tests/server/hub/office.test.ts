import { randomBytes } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { pullOnce, pushLacking } from '../../../core/hub/exchange.ts';
import { systemClock } from '../../../server/barn/clock.ts';
import { buildHubApp } from '../../../server/hub/app.ts';
import { invite } from '../../../server/hub/credentials.ts';
import { type HubDatabase, openHubDatabase } from '../../../server/hub/database.ts';
import { FarmCopies } from '../../../server/hub/farm-copies.ts';
import { letIn, placeFarm, shutOffice } from '../../../server/hub/office-grants.ts';
import { closeOffice, makeOffice } from '../../../server/hub/offices.ts';
import { createHolder } from '../../../server/sync/holder.ts';
import { openHubLine } from '../../../server/sync/line.ts';
import { HandBoard } from '../make/board-clocks.ts';
import { given } from '../make/book.ts';
import { hasPostgres, startPostgres, type TestPostgres } from '../make/postgres.ts';
import {
  bringToOffer,
  furnishShed,
  GOAT,
  standingOffer,
  type TestBarn,
  testBarn,
} from '../make/test-barn.ts';

/** Two farms share a hub: on the hill a goat was dosed, in the dale there are animals of other names. */
describe.runIf(hasPostgres)('the office of a hub', () => {
  const folder = mkdtempSync(join(tmpdir(), 'hub-office-'));
  let postgres: TestPostgres;
  let database: HubDatabase;
  let copies: FarmCopies;
  let app: FastifyInstance;
  let address: string;
  let url: string;
  let hill: { office: string; key: string };
  let vet: { office: string; key: string };
  let stranger: { office: string; key: string };
  const barns: TestBarn[] = [];

  beforeAll(async () => {
    postgres = await startPostgres();
    url = await postgres.database();
    database = await openHubDatabase(url);
    copies = new FarmCopies(database, join(folder, 'copies'), () => Date.UTC(2027, 3, 13));
    app = buildHubApp({ database, copies, tls: null, log: () => {} });
    address = await app.listen({ port: 0, host: '127.0.0.1' });
    const dosed = testBarn();
    bringToOffer(dosed);
    dosed.send({ type: 'give', offerId: standingOffer(dosed).id, outcome: 'whole' });
    const other = testBarn();
    other.send({ type: 'edit-animal', animalId: GOAT.id, edit: { what: 'name', name: 'Burdock' } });
    barns.push(dosed, other);
    await share('hill', dosed);
    await share('dale', other);
    [hill, vet, stranger] = [
      await makeOffice(database, 'Hill farm'),
      await makeOffice(database, 'Practice'),
      await makeOffice(database, 'Nobody'),
    ];
    await letIn(database, 'hill', hill.office);
    for (const farm of ['hill', 'dale']) await letIn(database, farm, vet.office);
    await placeFarm(database, 'hill', { area: 'North valley', timeZone: 'Europe/Dublin' });
  }, 60_000);
  afterAll(async () => {
    await app?.close();
    copies?.close();
    await database?.close();
    await postgres?.stop();
    for (const { store } of barns) store.close();
    rmSync(folder, { recursive: true, force: true });
  });

  async function share(farm: string, { barn, store }: TestBarn): Promise<void> {
    const invitation = await invite(database, farm, 'North shed', { hub: address, ca: null });
    const line = openHubLine({ invitation, kiosk: store.events.self().kiosk, named: () => {} });
    await pushLacking(createHolder(barn), line, new Map());
    line.close();
  }

  async function takeAll(farm: string, { barn, store }: TestBarn): Promise<void> {
    const invitation = await invite(database, farm, 'South shed', { hub: address, ca: null });
    const line = openHubLine({ invitation, kiosk: store.events.self().kiosk, named: () => {} });
    while ((await pullOnce(createHolder(barn), line, 0)).events.length > 0);
    line.close();
  }

  const ask = (url: string, key?: string) =>
    app.inject({ url, ...(key === undefined ? {} : { headers: { cookie: `byreside-office=${key}` } }) });

  test('shows a farm that lets it in as its kiosk would, by the clock of the farm', async () => {
    const board = await ask('/office/farms/hill/board', hill.key);
    expect(board.statusCode).toBe(200);
    expect(board.body).toContain('Teasel');
    expect(board.body).toContain('hill · North valley');
    const register = await ask('/office/farms/hill/register', hill.key);
    expect(register.body).toContain('1 treatment.');
    // Noon in UTC is one in the afternoon there, in April.
    expect(register.body).toContain('13:00');
    const csv = await ask('/office/farms/hill/files/register?from=2027-04-01', hill.key);
    expect(csv.headers['content-disposition']).toContain('hill-register-from-2027-04-01.csv');
    expect(csv.body).toContain('Teasel');
    expect(JSON.parse((await ask('/office/farms/hill/files/treatment-events', hill.key)).body)).toHaveLength(
      1,
    );
    expect((await ask('/office/farms/hill/files/calendar', hill.key)).statusCode).toBe(404);
    expect((await ask('/office/farms/hill/register?from=noon', hill.key)).statusCode).toBe(400);
  });

  test('of one farm sees that farm only, of several those that let it in, and of none nothing', async () => {
    const lists = await Promise.all(
      [hill, vet, stranger].map(async ({ key }) => (await ask('/office', key)).body),
    );
    expect(lists.map((body) => ['hill', 'dale'].filter((farm) => body.includes(`/farms/${farm}/`)))).toEqual([
      ['hill'],
      ['hill', 'dale'],
      [],
    ]);
    expect((await ask('/office/farms/dale/board', vet.key)).body).toContain('Burdock');
    for (const page of ['board', 'register', 'tests', 'files/register', 'files/weights'])
      for (const [farm, key] of [
        ['dale', hill.key],
        ['hill', stranger.key],
        ['nowhere', vet.key],
        ['..%2Fhill', stranger.key],
        ["x' OR farm = 'hill", stranger.key],
      ] as const) {
        const { statusCode, body } = await ask(`/office/farms/${encodeURI(farm)}/${page}`, key);
        expect([farm, page, statusCode]).toEqual([farm, page, 404]);
        expect(body).not.toMatch(/Teasel|Burdock|Campion/);
      }
    expect((await ask('/office/tests', stranger.key)).body).toContain('No finished test yet.');
  });

  test('lets nobody in with no key, a forged one, or another office’s', async () => {
    const forged = [
      undefined,
      '',
      vet.office,
      `${vet.office}.${randomBytes(32).toString('base64url')}`,
      `${vet.office}.${hill.key.split('.')[1]}`,
      `${randomBytes(8).toString('hex')}.${vet.key.split('.')[1]}`,
    ];
    for (const key of forged)
      for (const url of [
        '/office',
        '/office/tests',
        '/office/farms/hill/board',
        '/office/farms/hill/files/register',
      ]) {
        const { statusCode, headers } = await ask(url, key);
        expect([key, url, statusCode, headers['location']]).toEqual([key, url, 302, '/office/sign-in']);
      }
  });

  test('is entered by its key in a form, and left', async () => {
    const enter = (payload: string, headers = {}) =>
      app.inject({
        method: 'POST',
        url: '/office/session',
        headers: { 'content-type': 'application/x-www-form-urlencoded', ...headers },
        payload,
      });
    const done = await enter(`key=${vet.key}`);
    expect([done.statusCode, done.headers['location']]).toEqual([303, '/office']);
    expect(done.headers['set-cookie']).toMatch(/Path=\/office; HttpOnly; SameSite=Strict$/);
    expect((await enter('key=guess')).statusCode).toBe(401);
    expect((await enter(`key=${vet.key}`, { 'sec-fetch-site': 'cross-site' })).statusCode).toBe(403);
    const left = await app.inject({
      method: 'POST',
      url: '/office/leave',
      headers: { cookie: `byreside-office=${vet.key}` },
    });
    expect(left.headers['set-cookie']).toContain('Max-Age=0');
  });

  test('is written in the language of the browser, or in the one that was chosen there', async () => {
    const read = async (headers: Record<string, string>, url = '/office') =>
      (await app.inject({ url, headers: { cookie: `byreside-office=${vet.key}`, ...headers } })).body;
    expect(await read({})).toContain('<html lang="en">');
    expect(await read({ 'accept-language': 'es-MX,es;q=0.9,en;q=0.8' })).toContain('<h1>Fincas</h1>');
    expect(await read({ 'accept-language': 'de, es;q=0, en' })).toContain('<h1>Farms</h1>');
    const chosen = await app.inject({ url: '/office/language/es' });
    expect(chosen.headers['set-cookie']).toMatch(
      /^byreside-language=es; Path=\/office; .*HttpOnly; SameSite=Strict$/,
    );
    const cookie = `byreside-office=${vet.key}; byreside-language=es`;
    const inSpanish = { cookie, 'accept-language': 'en' };
    expect(await read(inSpanish, '/office/farms/hill/board')).toContain('Leche y venta');
    expect(await read(inSpanish, '/office/farms/hill/register')).toContain('1 tratamiento.');
    expect(await read(inSpanish, '/office/tests')).toContain('Ninguna prueba terminada aún.');
    expect(await read(inSpanish, '/office/farms/nowhere/board')).toContain('No hay tal página');
    expect(await read(inSpanish)).toContain('<a href="/office/language/en">English</a>');
    expect((await app.inject({ url: '/office/language/xx' })).headers['set-cookie']).toContain('language=en');
  });

  test('runs no script', async () => {
    for (const url of ['/office', '/office/tests', '/office/farms/hill/board']) {
      const { headers, body } = await ask(url, vet.key);
      expect(headers['content-security-policy']).toMatch(/^default-src 'none'; style-src 'self'/);
      expect(body).not.toMatch(/<script|<style|style="/);
    }
    expect((await ask('/office/office.css')).statusCode).toBe(200);
  });

  test('shows what came since, and a copy of it is for its owner only', async () => {
    await ask('/office/farms/dale/board', vet.key);
    const [, other] = barns;
    other?.send({ type: 'edit-animal', animalId: GOAT.id, edit: { what: 'name', name: 'Yarrow' } });
    await share('dale', other as TestBarn);
    const { body } = await ask('/office/farms/dale/board', vet.key);
    expect(body).toContain('Yarrow');
    expect(body).not.toContain('Burdock');
    expect(statSync(join(folder, 'copies')).mode & 0o077).toBe(0);
    expect(readdirSync(join(folder, 'copies'))).toContain('dale.sqlite');
  });

  test('dates a dose by the clock that was set at its kiosk, and so does every other kiosk', async () => {
    const board = new HandBoard(Date.UTC(1987, 3, 12, 11, 30));
    const clock = systemClock(Date.UTC(2026, 0, 1), board);
    const shed = testBarn(':memory:', undefined, { clock });
    const barn = testBarn(':memory:', furnishShed);
    barns.push(shed, barn);
    const { wallMs, board: at = null } = clock.now();
    const dose = given({ id: 't1', animal: GOAT.id, jug: 'jug-1', atMs: wallMs, trusted: false });
    shed.store.dayBook.addTreatment({ ...dose, board: at });
    await share('fell', shed);
    await letIn(database, 'fell', hill.office);
    const register = async () => (await ask('/office/farms/fell/register', hill.key)).body;
    expect(await register()).toContain('12 Apr 1987');
    board.pass(10 * 60_000);
    expect(shed.send({ type: 'set-clock', at: '2027-04-12T11:40' })).toMatchObject({ ok: true });
    await share('fell', shed);
    expect(await register()).toContain('12 Apr 2027');
    expect(await register()).not.toContain('1987');
    const csv = await ask('/office/farms/fell/files/register', hill.key);
    expect(csv.body).toContain('2027-04-12');
    expect(csv.body).not.toContain('1987');
    await takeAll('fell', barn);
    expect(barn.barn.context.memory.earlier).toMatchObject([
      { animalId: GOAT.id, givenAtMs: Date.UTC(2027, 3, 12, 11, 30), clockTrusted: true },
    ]);
  });

  test('is not misled by what a hub held before it was put back', async () => {
    await ask('/office/farms/dale/board', vet.key);
    const superuser = await postgres.asSuperuser(url);
    for (const table of ['events', 'lives'])
      await superuser.query(`DELETE FROM ${table} WHERE farm = 'dale'`);
    await superuser.query("UPDATE farms SET head = 0 WHERE farm = 'dale'");
    await superuser.end();
    const another = testBarn();
    another.send({ type: 'edit-animal', animalId: GOAT.id, edit: { what: 'name', name: 'Comfrey' } });
    barns.push(another);
    await share('dale', another);
    const { body } = await ask('/office/farms/dale/board', vet.key);
    expect(body).toContain('Comfrey');
    expect(body).not.toContain('Yarrow');
  });

  test('reads a farm no more that shut it out, and nothing once it is closed', async () => {
    expect(await shutOffice(database, 'dale', vet.office)).toBe(true);
    expect((await ask('/office/farms/dale/board', vet.key)).statusCode).toBe(404);
    expect((await ask('/office/farms/hill/board', vet.key)).statusCode).toBe(200);
    expect(await closeOffice(database, vet.office)).toBe(true);
    expect((await ask('/office/farms/hill/board', vet.key)).statusCode).toBe(302);
    expect(await shutOffice(database, 'dale', vet.office)).toBe(false);
    await expect(letIn(database, 'nowhere', hill.office)).rejects.toThrow('no farm');
    await expect(letIn(database, 'hill', 'nobody')).rejects.toThrow('no office');
  });
});
