import { randomBytes } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { buildHubApp } from '../../../server/hub/app.ts';
import { bearerOf, invite, listInvited, revoke } from '../../../server/hub/credentials.ts';
import { type HubDatabase, openHubDatabase } from '../../../server/hub/database.ts';
import { FarmCopies } from '../../../server/hub/farm-copies.ts';
import type { Invitation } from '../../../server/hub/wire.ts';
import { hasPostgres, startPostgres, type TestPostgres } from '../make/postgres.ts';

const HUB = { hub: 'http://127.0.0.1:4185', ca: null };

function event(sequence: number, over: object = {}) {
  return {
    sequence,
    id: `e-${sequence}`,
    clock: '000000000001000.00000',
    kind: 'note',
    body: { note: 'lame' },
    ...over,
  };
}

const batch = (from: number, to: number, over: object = {}) => ({
  kiosk: 'kiosk-a',
  life: 'life-a',
  before: from === 1 ? null : `e-${from - 1}`,
  events: Array.from({ length: to - from + 1 }, (_, i) => event(from + i)),
  ...over,
});

describe.runIf(hasPostgres)('the hub', () => {
  let postgres: TestPostgres;
  let database: HubDatabase;
  let copies: FarmCopies;
  let app: FastifyInstance;
  let url: string;
  let farm: string;
  let north: Invitation;
  let farms = 0;

  beforeAll(async () => {
    postgres = await startPostgres();
    url = await postgres.database();
    database = await openHubDatabase(url);
    copies = new FarmCopies(database, '/nowhere');
    app = buildHubApp({ database, copies, tls: null, log: () => {} });
  }, 60_000);
  afterAll(async () => {
    await app?.close();
    await database?.close();
    await postgres?.stop();
  });
  beforeEach(async () => {
    farm = `farm-${++farms}`;
    north = await invite(database, farm, 'North shed', HUB);
  });

  async function ask(path: string, body: unknown, as: Invitation | string = north) {
    const authorization = typeof as === 'string' ? as : bearerOf(as);
    const payload = typeof body === 'string' ? body : JSON.stringify(body);
    const headers = { authorization, 'content-type': 'application/json' };
    const { statusCode, body: text } = await app.inject({ method: 'POST', url: path, headers, payload });
    return { status: statusCode, answer: JSON.parse(text) };
  }
  const push = (body: unknown, as?: Invitation | string) => ask('/v1/push', body, as);
  const pull = async (as?: Invitation, have: object = {}) =>
    (await ask('/v1/pull', { kiosk: 'kiosk-b', have, waitMs: 0 }, as)).answer;
  const ids = async (as?: Invitation) => (await pull(as)).events.map(({ id }: { id: string }) => id);

  test('keeps what is pushed and gives it to the others, in order, from where each stands', async () => {
    expect(await push(batch(1, 3))).toEqual({ status: 200, answer: { ok: true, head: 3 } });
    const south = await invite(database, farm, 'South shed', HUB);
    expect(await pull(south)).toMatchObject({
      events: [1, 2, 3].map((sequence) => ({ ...event(sequence), kiosk: 'kiosk-a', life: 'life-a' })),
      heads: { 'life-a': 3 },
      parted: [],
      kiosks: { 'kiosk-b': 'South shed' },
    });
    expect((await pull(south, { 'life-a': { sequence: 2, id: 'e-2' } })).events).toHaveLength(1);
    expect((await pull(south, { 'life-a': { sequence: 3, id: 'e-3' } })).events).toHaveLength(0);
  });

  test('keeps a batch that is sent twice, or overlaps the last, once', async () => {
    await push(batch(1, 3));
    expect((await push(batch(1, 3))).answer).toEqual({ ok: true, head: 3 });
    expect((await push(batch(2, 5))).answer).toEqual({ ok: true, head: 5 });
    expect(await ids()).toEqual(['e-1', 'e-2', 'e-3', 'e-4', 'e-5']);
  });

  test('keeps what two pushes send at once, once', async () => {
    await Promise.all([push(batch(1, 20)), push(batch(1, 10)), push(batch(1, 20))]);
    expect(await ids()).toHaveLength(20);
  });

  test.each([
    ['with a gap', () => batch(3, 4), { ok: false, why: 'gap', head: 1 }],
    [
      'reordered',
      () => batch(2, 3, { events: [event(3), event(2)] }),
      { ok: false, why: 'out-of-order', head: 1 },
    ],
    [
      'that doubles a number',
      () => batch(2, 3, { events: [event(2), event(2)] }),
      { ok: false, why: 'out-of-order', head: 1 },
    ],
    [
      'under numbers that are others',
      () => batch(1, 1, { events: [event(1, { id: 'other' })] }),
      { ok: false, why: 'sequence-reused', head: 1 },
    ],
    [
      'after an event that is another',
      () => batch(2, 2, { before: 'other' }),
      { ok: false, why: 'sequence-reused', head: 1 },
    ],
  ])('refuses a batch %s, and keeps nothing of it', async (_, make, answer) => {
    await push(batch(1, 1));
    expect(await push(make())).toEqual({ status: 200, answer });
    expect(await ids()).toEqual(['e-1']);
  });

  test.each([
    ['that is no JSON', '{', 400],
    ['without events', batch(1, 1, { events: [] }), 400],
    ['of more events than are taken', batch(1, 501), 400],
    ['with a body that is none', batch(1, 1, { events: [event(1, { body: 'x' })] }), 400],
    ['with a clock that is none', batch(1, 1, { events: [event(1, { clock: 'noon' })] }), 400],
    ['with a name that is SQL', batch(1, 1, { life: "x'; DROP TABLE events; --" }), 400],
    ['with something nobody knows', { ...batch(1, 1), farm: 'farm-1' }, 400],
    [
      'that is too large',
      batch(1, 1, { events: [event(1, { body: { note: 'x'.repeat(2 * 1024 * 1024) } })] }),
      413,
    ],
  ])('refuses a batch %s with a reason, and keeps nothing', async (_, body, status) => {
    const refused = await push(body);
    expect(refused.status).toBe(status);
    expect(refused.answer.message).toMatch(/\w/);
    expect(await ids()).toEqual([]);
  });

  test('tells a kiosk whose last event is another than it holds', async () => {
    await push(batch(1, 3));
    const answer = await pull(north, { 'life-a': { sequence: 2, id: 'other' } });
    expect(answer).toMatchObject({ parted: ['life-a'], events: [] });
    expect((await ask('/v1/id', { life: 'life-a', sequence: 2 })).answer).toEqual({ id: 'e-2' });
    expect((await ask('/v1/id', { life: 'life-a', sequence: 9 })).answer).toEqual({ id: null });
  });

  test('does not let a kiosk go on a life as another', async () => {
    await push(batch(1, 1));
    expect((await push(batch(2, 2, { kiosk: 'kiosk-x' }))).status).toBe(403);
    expect(await ids()).toEqual(['e-1']);
  });

  test('lets nobody in without a credential, with a forged one, or with one of another farm', async () => {
    await push(batch(1, 1));
    const other = await invite(database, `${farm}-other`, 'North shed', HUB);
    const forged: [string, string][] = [
      ['nothing', ''],
      ['no key', `Bearer ${farm}.${north.credential}.`],
      ['a guessed key', bearerOf({ ...north, key: randomBytes(32).toString('base64url') })],
      ['another farm’s key under this farm', bearerOf({ ...other, farm })],
      ['this farm’s key under another', bearerOf({ ...north, farm: other.farm })],
    ];
    for (const [what, header] of forged) {
      const refused = await push(batch(2, 2), header);
      expect([what, refused.status, refused.answer.code]).toEqual([what, 401, 'unknown-kiosk']);
    }
    expect(await ids(other)).toEqual([]);
    expect(await ids()).toEqual(['e-1']);
  });

  test('keeps farms apart that use the same names for everything', async () => {
    const other = await invite(database, `${farm}-other`, 'North shed', HUB);
    await push(batch(1, 2));
    await push(batch(1, 1, { events: [event(1, { id: 'theirs' })] }), other);
    expect(await ids()).toEqual(['e-1', 'e-2']);
    expect(await ids(other)).toEqual(['theirs']);
  });

  test('shuts out a kiosk that was revoked, at once and for all it asks', async () => {
    await push(batch(1, 1));
    expect(await revoke(database, farm, 'North shed')).toBe(1);
    for (const [path, body] of [
      ['/v1/push', batch(2, 2)],
      ['/v1/pull', { kiosk: 'kiosk-a', have: {}, waitMs: 0 }],
      ['/v1/id', { life: 'life-a', sequence: 1 }],
    ] as const)
      expect(await ask(path, body)).toMatchObject({ status: 401, answer: { code: 'revoked' } });
    expect(await listInvited(database, farm)).toMatchObject([{ name: 'North shed', revoked: true }]);
    const again = await invite(database, farm, 'North shed', HUB);
    expect(await ids(again)).toEqual(['e-1']);
  });

  test('tells a kiosk nothing that was shut out while it waited for news', async () => {
    const south = await invite(database, farm, 'South shed', HUB);
    const waits = { kiosk: 'kiosk-b', have: {}, waitMs: 5000 };
    const waiting = ask('/v1/pull', waits, bearerOf(south));
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(await revoke(database, farm, 'South shed')).toBe(1);
    await push(batch(1, 1));
    expect(await waiting).toMatchObject({ status: 401, answer: { code: 'revoked' } });
  });

  test('answers a kiosk that waits as soon as there is news', async () => {
    const began = performance.now();
    const waiting = ask('/v1/pull', { kiosk: 'kiosk-b', have: {}, waitMs: 15_000 });
    await new Promise((resolve) => setTimeout(resolve, 200));
    await push(batch(1, 1));
    expect((await waiting).answer.events).toHaveLength(1);
    expect(performance.now() - began).toBeLessThan(10_000);
  });

  test('the database itself shows a farm its own rows only, whatever a statement asks for', async () => {
    const other = await invite(database, `${farm}-other`, 'North shed', HUB);
    await push(batch(1, 2));
    await push(batch(1, 1), other);
    const seen = await database.asFarm(
      farm,
      async (client) => (await client.query('SELECT DISTINCT farm FROM events')).rows,
    );
    expect(seen).toEqual([{ farm }]);
    const write = database.asFarm(farm, (client) =>
      client.query("UPDATE events SET body = '{}' WHERE farm = $1", [other.farm]),
    );
    expect((await write).rowCount).toBe(0);
    const forge = database.asFarm(farm, (client) =>
      client.query("INSERT INTO lives (farm, life, kiosk) VALUES ($1, 'forged', 'x')", [other.farm]),
    );
    await expect(forge).rejects.toThrow('row-level security');
  });

  test('keys are nowhere in the database', async () => {
    const superuser = await postgres.asSuperuser(url);
    const { rows } = await superuser.query(
      'SELECT credentials::text AS row FROM credentials WHERE farm = $1',
      [farm],
    );
    await superuser.end();
    expect(rows).toHaveLength(1);
    expect(rows[0].row).not.toContain(north.key);
  });

  test('whoever is turned away too often is told to wait, and a kiosk beside it is not', async () => {
    const stranger = (n: number) => bearerOf({ ...north, credential: `guess-${n}` });
    const statuses: number[] = [];
    const other = buildHubApp({ database, copies, tls: null, log: () => {} });
    const as = async (authorization: string) => {
      const headers = { authorization, 'content-type': 'application/json' };
      const payload = JSON.stringify({ life: 'life-a', sequence: 1 });
      return (await other.inject({ method: 'POST', url: '/v1/id', headers, payload })).statusCode;
    };
    expect(await as(bearerOf(north))).toBe(200);
    for (let n = 0; n < 40; n += 1) statuses.push(await as(stranger(n)));
    expect(statuses[0]).toBe(401);
    expect(statuses.at(-1)).toBe(429);
    expect(await as(bearerOf(north))).toBe(200);
    await other.close();
  });

  test('a connection that is closed under a statement costs that request, and nothing else', async () => {
    const superuser = await postgres.asSuperuser(url);
    const asleep = database.asFarm(farm, (client) => client.query('SELECT pg_sleep(20)'));
    const lost = expect(asleep).rejects.toThrow(/terminat/);
    const atWork = "application_name = 'byreside-hub' AND query LIKE '%pg_sleep%' AND state = 'active'";
    const close = `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE ${atWork}`;
    await expect.poll(async () => (await superuser.query(close)).rowCount).toBe(1);
    await superuser.end();
    await lost;
    expect((await push(batch(1, 1))).answer).toEqual({ ok: true, head: 1 });
  });

  test('is not opened as a superuser', async () => {
    await expect(openHubDatabase(url.replace('byreside', 'postgres'))).rejects.toThrow('superuser');
  });

  test('a database of a later program is left alone', async () => {
    const later = await postgres.database();
    await (await openHubDatabase(later)).close();
    const superuser = await postgres.asSuperuser(later);
    await superuser.query('UPDATE hub_schema SET version = 999');
    await superuser.end();
    await expect(openHubDatabase(later)).rejects.toThrow('version 999');
  });

  test('refuses while the database is gone, and goes on with all it kept when it is back', async () => {
    await push(batch(1, 2));
    await postgres.crash();
    expect(await push(batch(3, 3))).toMatchObject({ status: 500, answer: { code: 'failed' } });
    await postgres.startAgain();
    expect((await push(batch(3, 3))).answer).toEqual({ ok: true, head: 3 });
    expect(await ids()).toEqual(['e-1', 'e-2', 'e-3']);
  });
});
