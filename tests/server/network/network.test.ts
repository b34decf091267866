import { mkdtempSync, rmSync } from 'node:fs';
import { get } from 'node:https';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { closedNetwork, memoryAccess } from '../make/closed-network.ts';
import { type NetworkApp, networkApp } from '../make/network-app.ts';
import { testApp } from '../make/test-app.ts';
import { bringToOffer, testBarn } from '../make/test-barn.ts';

const closers: (() => Promise<unknown> | unknown)[] = [];
afterEach(async () => {
  for (const close of closers.splice(0).reverse()) await close();
});

async function open(): Promise<NetworkApp> {
  const opened = await networkApp();
  closers.push(opened.close);
  return opened;
}

async function until(condition: () => boolean): Promise<void> {
  for (let i = 0; i < 200 && !condition(); i += 1) await new Promise((resolve) => setTimeout(resolve, 10));
  expect(condition()).toBe(true);
}

const FACE = { type: 'set-face', id: 'f1', face: 'glare' } as const;

describe('the door for other devices', () => {
  test('is shut until it is turned on, and shut at once when it is turned off', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'network-'));
    closers.push(() => rmSync(folder, { recursive: true }));
    const network = closedNetwork({ folder, file: memoryAccess() });
    const barn = testBarn(':memory:', undefined, { network });
    const { app } = await testApp(null, barn, null, network);
    const board = await app.listen({ port: 0, host: '127.0.0.1' });
    closers.push(() => app.close());
    expect(network.view()).toMatchObject({ listening: 'off', address: null, fingerprint: null });
    expect(barn.send({ type: 'pair-device', right: 'follow' })).toMatchObject({ code: 'network-off' });
    expect(barn.send({ type: 'set-network', on: true })).toMatchObject({ ok: true });
    await until(() => network.view().listening === 'on');
    const port = Number(new URL(network.address ?? '').port);
    const seen = await overTls(port, '/api/state');
    expect(seen).toMatchObject({ status: 401, fingerprint: network.view().fingerprint });
    // The board's own door is as it was.
    expect((await fetch(`${board}/api/state`)).status).toBe(200);
    barn.send({ type: 'set-network', on: false });
    await until(() => network.view().listening === 'off');
    await expect(overTls(port, '/api/state')).rejects.toThrow(/ECONNREFUSED/);
  });

  test('stays shut where its port is taken, and says so', async () => {
    const { app: other } = await testApp();
    await other.listen({ port: 0, host: '0.0.0.0' });
    closers.push(() => other.close());
    const { port } = other.server.address() as AddressInfo;
    const network = closedNetwork({
      config: { on: true, port: 0, proxy: { port, name: 'kiosk.example' } },
    });
    const { app } = await testApp(null, testBarn(':memory:', undefined, { network }), null, network);
    await app.listen({ port: 0, host: '127.0.0.1' });
    closers.push(() => app.close());
    await until(() => network.view().listening === 'trouble');
    expect(network.view().trouble).toBe('port-taken');
  });

  test('turned on by the file it is not turned off at the screen', async () => {
    const { barn } = await open();
    expect(barn.send({ type: 'set-network', on: false })).toMatchObject({ code: 'network-set-by-file' });
  });
});

describe('a device', () => {
  test('that is not paired sees nothing, by HTTP or socket', async () => {
    const { ask, page } = await open();
    for (const path of ['/api/state', '/api/health', '/api/treatments', '/print/register'])
      expect((await ask(path)).status).toBe(401);
    expect(await (await ask('/api/session')).json()).toEqual({ kind: 'stranger' });
    expect((await ask('/api/intents', { method: 'POST', body: FACE })).status).toBe(401);
    await expect(page('__Host-byreside=x')).rejects.toThrow(/401/);
  });

  test('is paired by the code of the screen, follows, and changes nothing', async () => {
    const { ask, pair, page, barn } = await open();
    const cookie = await pair('follow');
    expect(cookie).toMatch(/^__Host-byreside=[\w-]{43}$/);
    expect((await ask('/api/state', { headers: { cookie } })).status).toBe(200);
    const { received, send } = await page(cookie);
    await until(() => received.length >= 2);
    expect(received[0]).toMatchObject({ visitor: { kind: 'device', right: 'follow', person: null } });
    const { face } = barn.barn.context.memory.settings;
    send({ type: 'intent', intent: FACE });
    await until(() => received.some(({ type }) => type === 'answer'));
    expect(received.find(({ type }) => type === 'answer')).toMatchObject({
      answer: { ok: false, code: 'follows-only' },
    });
    const posted = await ask('/api/intents', { method: 'POST', headers: { cookie }, body: FACE });
    expect([posted.status, barn.barn.context.memory.settings.face]).toEqual([403, face]);
  });

  test('works only once a person gave their PIN, and what it logs stands in that name', async () => {
    const { ask, pair, work, barn } = await open();
    const cookie = await pair('act');
    const offerId = bringToOffer(barn);
    const give = (id: string) =>
      ask('/api/intents', {
        method: 'POST',
        headers: { cookie },
        body: { type: 'give', id, offerId, outcome: 'whole' },
      });
    expect(await (await give('g1')).json()).toMatchObject({ code: 'needs-pin' });
    await work(cookie, 'Finch');
    expect(await (await give('g2')).json()).toMatchObject({ ok: true });
    const treatments = (await (await ask('/api/treatments', { headers: { cookie } })).json()) as object[];
    expect(treatments[0]).toMatchObject({ by: 'Finch' });
    // Who works at the kiosk itself is who it was.
    expect(barn.barn.context.memory.settings.person).toBe('Wren');
  });

  test('loses its person when the work ends, by the device, another PIN, or none', async () => {
    const { ask, pair, work, network } = await open();
    const cookie = await pair('act');
    const session = async () =>
      ((await (await ask('/api/session', { headers: { cookie } })).json()) as { person: string }).person;
    await work(cookie, 'Finch');
    expect(await session()).toBe('Finch');
    await ask('/api/session', { method: 'DELETE', headers: { cookie } });
    expect(await session()).toBeNull();
    await work(cookie, 'Finch');
    await network.setPin('Finch', '1470');
    expect(await session()).toBeNull();
    await work(cookie, 'Finch');
    network.forgetPin('Finch');
    expect(await session()).toBeNull();
  });

  test('that guesses a PIN waits, though it guesses many at once', async () => {
    const { ask, pair, network } = await open();
    const cookie = await pair('act');
    await network.setPin('Wren', '2580');
    const guess = async (pin: string) => {
      const body = { person: 'Wren', pin };
      const answer = await ask('/api/session', { method: 'POST', headers: { cookie }, body });
      return ((await answer.json()) as { why?: string }).why ?? 'in';
    };
    const answers = await Promise.all(Array.from({ length: 12 }, (_, i) => guess(String(1000 + i))));
    expect(answers.filter((why) => why === 'wrong').length).toBe(3);
    expect(answers.filter((why) => why === 'wait').length).toBe(9);
    // The right one waits too: an answer to it would tell it.
    expect(await guess('2580')).toBe('wait');
  });

  test('may do what its right says and no more', async () => {
    const { ask, pair, work } = await open();
    const post = async (cookie: string, body: object) => {
      const answer = await ask('/api/intents', { method: 'POST', headers: { cookie }, body });
      return ((await answer.json()) as { code?: string }).code ?? 'ok';
    };
    const currency = { type: 'set-currency', id: 'c', currency: 'EUR' };
    const acting = await pair('act');
    await work(acting, 'Wren');
    expect(await post(acting, currency)).toBe('needs-set-up');
    const settingUp = await pair('set-up');
    expect(await post(settingUp, currency)).toBe('needs-pin');
    await work(settingUp, 'Finch');
    expect(await post(settingUp, currency)).toBe('ok');
    for (const intent of [FACE, { type: 'pair-device', id: 'p', right: 'set-up' }])
      expect(await post(settingUp, intent)).toBe('board-only');
    expect((await ask('/api/network/pairing', { headers: { cookie: settingUp } })).status).toBe(403);
    const pin = await ask('/api/pins/Wren', {
      method: 'POST',
      headers: { cookie: settingUp },
      body: { pin: '1111' },
    });
    expect(pin.status).toBe(403);
  });

  test('that is turned out is gone at once: its pages are closed and its token is worth nothing', async () => {
    const { ask, pair, page, network, barn } = await open();
    const cookie = await pair('follow');
    const other = await pair('follow');
    const [gone, stays] = [await page(cookie), await page(other)];
    await until(() => stays.received.length >= 2);
    const [first] = network.view().devices;
    expect(first).toMatchObject({ number: 1, open: true, right: 'follow' });
    expect(first?.lastSeenAt).not.toBeNull();
    barn.send({ type: 'revoke-device', deviceId: first?.id ?? '' });
    expect(await gone.closed).toBe(1008);
    expect((await ask('/api/state', { headers: { cookie } })).status).toBe(401);
    expect((await ask('/api/state', { headers: { cookie: other } })).status).toBe(200);
    expect(network.view().devices.map(({ number }) => number)).toEqual([2]);
  });

  test('hears at once who came to work on it', async () => {
    const { pair, page, work } = await open();
    const cookie = await pair('act');
    const { received } = await page(cookie);
    await work(cookie, 'Finch');
    await until(() => received.some(({ type }) => type === 'visitor'));
    expect(received.find(({ type }) => type === 'visitor')).toEqual({
      type: 'visitor',
      visitor: { kind: 'device', right: 'act', person: 'Finch' },
    });
  });

  test('gets no token over a way that can be read', async () => {
    const { ask, network, doors } = await open();
    network.pair('act');
    const body = { code: network.pairingCode()?.code };
    const plain = await ask('/api/pair', {
      method: 'POST',
      headers: { 'x-forwarded-proto': 'http' },
      body,
    });
    expect([plain.status, plain.headers.get('set-cookie')]).toEqual([403, null]);
    const atBoard = await fetch(`${doors.board}/api/pair`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    expect(atBoard.status).toBe(403);
    expect((await ask('/api/pair', { method: 'POST', body })).headers.get('set-cookie')).toMatch(
      /; HttpOnly; Secure; SameSite=Strict$/,
    );
  });

  test('is told of no code in the state that every page gets', async () => {
    const { ask, pair, network } = await open();
    const cookie = await pair('set-up');
    network.pair('act');
    const { code = '' } = network.pairingCode() ?? {};
    const state = await (await ask('/api/state', { headers: { cookie } })).text();
    expect(state).toContain('"pairing":{"right":"act"');
    expect(state).not.toContain(code);
  });
});

test('behind the proxy’s door nobody is the board, whatever headers come or are missing', async () => {
  const { doors } = await open();
  const state = async (door: string, headers: Record<string, string> = {}) =>
    (await fetch(`${door}/api/state`, { headers })).status;
  expect(await state(doors.proxy)).toBe(401);
  expect(await state(doors.proxy, { 'x-forwarded-proto': 'https', 'x-forwarded-for': '127.0.0.1' })).toBe(
    401,
  );
  expect(await state(doors.board)).toBe(200);
});

test('each device behind a proxy has a pace of its own, by the proxy’s word and not its own', async () => {
  const { ask } = await open();
  const ping = (from: string) => ask('/api/session', { headers: { 'x-forwarded-for': from } });
  const codes: Response[] = [];
  for (let i = 0; i < 300; i += 100)
    codes.push(...(await Promise.all(Array.from({ length: 100 }, () => ping(`10.9.9.${i}, 10.0.0.7`)))));
  expect(codes.filter(({ status }) => status === 429).length).toBeGreaterThan(10);
  expect((await ping('10.0.0.8')).status).toBe(200);
});

/** Asks over TLS as a browser whose user looked at the fingerprint and went on. */
function overTls(port: number, path: string): Promise<{ status: number | undefined; fingerprint: string }> {
  return new Promise((resolve, reject) => {
    get({ host: '127.0.0.1', port, path, rejectUnauthorized: false, agent: false }, (response) => {
      const socket = response.socket as import('node:tls').TLSSocket;
      resolve({ status: response.statusCode, fingerprint: socket.getPeerCertificate().fingerprint256 });
      response.resume();
    }).on('error', reject);
  });
}
