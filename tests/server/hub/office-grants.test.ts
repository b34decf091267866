import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildHubApp } from '../../../server/hub/app.ts';
import { bearerOf, invite, revoke } from '../../../server/hub/credentials.ts';
import { type HubDatabase, openHubDatabase } from '../../../server/hub/database.ts';
import { FarmCopies } from '../../../server/hub/farm-copies.ts';
import { letIn } from '../../../server/hub/office-grants.ts';
import { closeOffice, makeOffice } from '../../../server/hub/offices.ts';
import type { Invitation } from '../../../server/hub/wire.ts';
import { openHubLine } from '../../../server/sync/line.ts';
import type { OfficesView } from '../../../shared/farm.ts';
import { hasPostgres, startPostgres, type TestPostgres } from '../make/postgres.ts';

/** Two farms with a kiosk each, and a practice that asks one of them to be let in. */
describe.runIf(hasPostgres)('an office that asks a farm', () => {
  const folder = mkdtempSync(join(tmpdir(), 'office-grants-'));
  let postgres: TestPostgres;
  let database: HubDatabase;
  let copies: FarmCopies;
  let app: FastifyInstance;
  let url: string;
  let hill: Invitation;
  let dale: Invitation;
  let vet: { office: string; key: string };

  beforeAll(async () => {
    postgres = await startPostgres();
    url = await postgres.database();
    database = await openHubDatabase(url);
    copies = new FarmCopies(database, folder);
    app = buildHubApp({ database, copies, tls: null, log: () => {} });
    const hub = await app.listen({ port: 0, host: '127.0.0.1' });
    hill = await invite(database, 'hill', 'North shed', { hub, ca: null });
    dale = await invite(database, 'dale', 'South shed', { hub, ca: null });
    vet = await makeOffice(database, 'Hill Practice');
  }, 60_000);
  afterAll(async () => {
    await app?.close();
    copies?.close();
    await database?.close();
    await postgres?.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  const ask = (farm: string, key = vet.key) =>
    app.inject({
      method: 'POST',
      url: '/office/ask',
      headers: {
        cookie: `byreside-office=${key}`,
        'content-type': 'application/x-www-form-urlencoded',
      },
      payload: new URLSearchParams({ farm }).toString(),
    });
  const reads = async (farm: string) =>
    (
      await app.inject({
        url: `/office/farms/${farm}/board`,
        headers: { cookie: `byreside-office=${vet.key}` },
      })
    ).statusCode === 200;
  /** What a kiosk is told over its line, once it said something. */
  async function told(as: Invitation, say: { office: string; reads: boolean } | null = null) {
    const line = openHubLine({ invitation: as, kiosk: 'kiosk-1', named: () => {} });
    try {
      return (await line.offices(say)).offices.map(({ office, name, state }) => ({ office, name, state }));
    } finally {
      line.close();
    }
  }
  const standing = (state: OfficesView['offices'][number]['state']) => [
    { office: vet.office, name: 'Hill Practice', state },
  ];

  test('is found at the kiosk of that farm only, and reads nothing until it is let in', async () => {
    expect(await told(hill)).toEqual([]);
    const asked = await ask('hill');
    expect([asked.statusCode, asked.headers['location']]).toEqual([303, '/office/asked/hill']);
    expect(await told(hill)).toEqual(standing('asks'));
    expect(await told(dale)).toEqual([]);
    expect(await reads('hill')).toBe(false);
  });

  test('is told the same of a farm that is not there', async () => {
    const [there, not] = [await ask('dale'), await ask('nowhere')];
    expect(not.statusCode).toBe(there.statusCode);
    expect(not.headers['location']).toBe('/office/asked/nowhere');
    expect((await ask("x' OR 1=1")).headers['location']).toBe('/office/asked');
    expect((await ask('hill', `${vet.office}.${'k'.repeat(43)}`)).headers['location']).toBe(
      '/office/sign-in',
    );
  });

  test('is let in, shut out and let in again by the kiosk, each once and at once', async () => {
    for (const says of [true, true, false, false, true, false]) {
      expect(await told(hill, { office: vet.office, reads: says })).toEqual(
        standing(says ? 'reads' : 'shut-out'),
      );
      expect(await reads('hill')).toBe(says);
    }
    await ask('hill');
    expect(await told(hill)).toEqual(standing('asks'));
    expect(await reads('hill')).toBe(false);
    expect(await told(hill, { office: vet.office, reads: false })).toEqual(standing('shut-out'));
    await told(hill, { office: vet.office, reads: true });
  });

  test('is not let in by a kiosk of another farm, nor one that asked nobody by anybody', async () => {
    const stranger = await makeOffice(database, 'Nobody');
    for (const office of [stranger.office, randomUUID(), "x' OR true --", '']) {
      await expect(told(hill, { office, reads: true })).rejects.toThrow();
      await expect(told(hill, { office, reads: false })).rejects.toThrow();
    }
    expect(await told(hill)).toEqual(standing('reads'));
    await told(dale, { office: vet.office, reads: false });
    expect(await reads('hill')).toBe(true);
    expect(await reads('dale')).toBe(false);
    const forged = { ...dale, farm: 'hill' };
    await expect(told(forged, { office: vet.office, reads: false })).rejects.toThrow(
      'does not know the kiosk',
    );
    expect(await reads('hill')).toBe(true);
  });

  test('which kiosk said so is kept; a revoked one says nothing more', async () => {
    const superuser = await postgres.asSuperuser(url);
    const { rows } = await superuser.query("SELECT said_by FROM office_grants WHERE farm = 'hill'");
    await superuser.end();
    expect(rows).toEqual([{ said_by: hill.credential }]);
    await revoke(database, 'hill', 'North shed');
    await expect(told(hill, { office: vet.office, reads: false })).rejects.toThrow('was shut out');
    expect(await reads('hill')).toBe(true);
  });

  test('one the operator let in is found too, and a closed office reads nothing', async () => {
    await letIn(database, 'dale', vet.office);
    expect(await told(dale)).toEqual(standing('reads'));
    await closeOffice(database, vet.office);
    expect(await reads('dale')).toBe(false);
  });

  test('a body that is none is refused, and a request without a credential', async () => {
    const post = (headers: object, payload: object) =>
      app.inject({ method: 'POST', url: '/v1/offices', headers: { ...headers }, payload });
    const authorization = bearerOf(dale);
    expect((await post({}, { say: null })).statusCode).toBe(401);
    expect((await post({ authorization }, { say: { office: 7, reads: true } })).statusCode).toBe(400);
    expect((await post({ authorization }, { say: null, farm: 'hill' })).statusCode).toBe(400);
  });
});
