import { type AddressInfo, connect } from 'node:net';
import { hostname } from 'node:os';
import type { InjectOptions } from 'fastify';
import { describe, expect, test } from 'vitest';
import { buildApp } from '../../../server/app.ts';
import { testApp } from '../make/test-app.ts';

const OTHER = '192.168.1.77';

/** The server as it stands where its plain door was bound to the farm's network. */
async function onNetwork() {
  const { house, test: barn } = await testApp();
  const app = await buildApp(house, '0.0.0.0', null);
  const ask = (options: InjectOptions) =>
    app.inject({
      remoteAddress: OTHER,
      ...options,
      headers: { host: '192.168.1.20:4180', ...options.headers },
    });
  return { app, ask, barn };
}

describe('another machine at the plain door', () => {
  test.each(['/api/state', '/api/treatments', '/print/register', '/print/jug/j1?paper=roll'])(
    'sees nothing of %s, with whatever cookie',
    async (url) => {
      const { ask } = await onNetwork();
      const headers = { cookie: '__Host-byreside=made-up' };
      expect((await ask({ url, headers })).statusCode).toBe(401);
    },
  );

  test.each([
    '/api/intents',
    '/api/photos',
    '/api/import',
    '/api/weather-import',
    '/api/exports/register',
    '/api/pins/Wren',
    '/api/session',
  ])('puts nothing in at %s', async (url) => {
    const { ask, barn } = await onNetwork();
    const before = barn.barn.revision();
    const payload = { type: 'set-face', id: 'f1', face: 'glare' };
    expect((await ask({ method: 'POST', url, payload })).statusCode).toBe(401);
    expect(barn.barn.revision()).toBe(before);
  });

  test('that asks without end is told to wait, and no other with it', async () => {
    const { ask } = await onNetwork();
    const ping = { url: '/api/session' };
    const codes = await Promise.all(Array.from({ length: 260 }, () => ask(ping)));
    expect(codes.filter(({ statusCode }) => statusCode === 429).length).toBeGreaterThan(10);
    expect((await ask({ ...ping, remoteAddress: '192.168.1.78' })).statusCode).toBe(200);
    expect((await ask({ url: '/api/health', remoteAddress: '127.0.0.1' })).statusCode).toBe(200);
  });
});

test.each([
  'x-forwarded-for',
  'x-forwarded-host',
  'x-forwarded-proto',
  'x-forwarded-server',
  'forwarded',
  'via',
  'x-real-ip',
])('what a proxy on the board hands on by %s is not the board’s', async (header) => {
  const { ask } = await onNetwork();
  const from = { url: '/api/state', remoteAddress: '127.0.0.1' };
  expect((await ask({ ...from, headers: { [header]: '10.0.0.1' } })).statusCode).toBe(401);
  expect((await ask(from)).statusCode).toBe(200);
});

test('what comes in the tongue of proxies, HTTP/1.0, is not the board’s', async () => {
  const { app } = await testApp();
  await app.listen({ port: 0, host: '127.0.0.1' });
  const { port } = app.server.address() as AddressInfo;
  const answerTo = (version: string) =>
    new Promise<string>((resolve) => {
      const socket = connect(port, '127.0.0.1', () =>
        socket.end(`GET /api/health HTTP/${version}\r\nHost: localhost\r\nConnection: close\r\n\r\n`),
      );
      let said = '';
      socket.on('data', (bytes) => {
        said += bytes;
      });
      socket.on('close', () => resolve(said.split(' ')[1] ?? ''));
    });
  expect([await answerTo('1.0'), await answerTo('1.1')]).toEqual(['401', '200']);
  await app.close();
});

test.each([
  ['a foreign name', 'evil.example:4180', 421],
  ['a foreign name like a number', '192.168.1.20.evil.example', 421],
  ['its number', '192.168.1.20:4180', 200],
  ['its number of the sixth version', '[fe80::1]:4180', 200],
  ['its name', `${hostname()}.local:4180`, 200],
])('on the network a request by %s is answered', async (_by, host, status) => {
  const { ask } = await onNetwork();
  expect((await ask({ url: '/api/session', headers: { host } })).statusCode).toBe(status);
});

test.each([
  ['cross-site', '/api/state', 403],
  ['same-site', '/print/jug/j1?paper=roll', 403],
  ['same-origin', '/api/state', 200],
  ['none', '/api/state', 200],
])('what a page elsewhere (%s) has the browser fetch of %s is answered', async (site, url, status) => {
  const { app } = await testApp();
  const headers = { host: 'localhost:4180', 'sec-fetch-site': site };
  expect((await app.inject({ url, headers })).statusCode).toBe(status);
});

test('every answer says what it is and may load nothing', async () => {
  const { app } = await testApp();
  for (const url of ['/api/state', '/nothing', '/api/nothing']) {
    const { headers } = await app.inject({ url, headers: { host: 'localhost:4180' } });
    expect(headers).toMatchObject({
      'content-security-policy': expect.stringMatching(/^default-src 'none'/),
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
    });
  }
});
