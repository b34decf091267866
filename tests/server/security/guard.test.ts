import { hostname } from 'node:os';
import type { InjectOptions } from 'fastify';
import { describe, expect, test } from 'vitest';
import { buildApp } from '../../../server/app.ts';
import { testApp } from '../make/test-app.ts';

const FOLLOWER = '192.168.1.77';
const INTENT = {
  method: 'POST',
  url: '/api/intents',
  payload: { type: 'set-face', id: 'f1', face: 'glare' },
} as const;

/** The server as it stands on the farm's network. */
async function onNetwork() {
  const { house, test: barn } = await testApp();
  const app = await buildApp(house, '0.0.0.0', null);
  const ask = (options: InjectOptions) =>
    app.inject({
      remoteAddress: FOLLOWER,
      ...options,
      headers: { host: '192.168.1.20:4180', ...options.headers },
    });
  return { app, ask, barn };
}

describe('another machine', () => {
  test('reads what it is shown, and changes nothing', async () => {
    const { ask, barn } = await onNetwork();
    expect((await ask({ url: '/api/state' })).statusCode).toBe(200);
    expect((await ask({ url: '/print/register' })).statusCode).toBe(200);
    const before = barn.barn.context.memory.settings.face;
    expect(await ask(INTENT)).toMatchObject({ statusCode: 403 });
    expect(barn.barn.context.memory.settings.face).toBe(before);
  });

  test.each(['/api/photos', '/api/import', '/api/weather-import', '/api/exports/register'])(
    'puts nothing in at %s',
    async (url) => {
      const { ask } = await onNetwork();
      expect(
        (await ask({ method: 'POST', url, payload: 'x', headers: { 'content-type': 'text/csv' } }))
          .statusCode,
      ).toBe(403);
    },
  );

  test('chooses no paper, though that page is only read', async () => {
    const { ask } = await onNetwork();
    for (const page of ['jug', 'group'])
      expect((await ask({ url: `/print/${page}/j1?paper=roll` })).statusCode).toBe(403);
  });

  test('that asks without end is told to wait, and no other with it', async () => {
    const { ask } = await onNetwork();
    const codes = await Promise.all(Array.from({ length: 260 }, () => ask({ url: '/api/health' })));
    expect(codes.filter(({ statusCode }) => statusCode === 429).length).toBeGreaterThan(10);
    expect((await ask({ url: '/api/health', remoteAddress: '192.168.1.78' })).statusCode).toBe(200);
    expect((await ask({ url: '/api/health', remoteAddress: '127.0.0.1' })).statusCode).toBe(200);
  });
});

test.each(['x-forwarded-for', 'forwarded', 'via', 'x-real-ip'])(
  'what a proxy on the board hands on by %s is a follower’s',
  async (header) => {
    const { ask } = await onNetwork();
    const from = { ...INTENT, remoteAddress: '127.0.0.1' };
    expect((await ask({ ...from, headers: { [header]: '10.0.0.1' } })).statusCode).toBe(403);
    expect((await ask(from)).statusCode).toBe(200);
  },
);

test.each([
  ['a foreign name', 'evil.example:4180', 421],
  ['a foreign name like a number', '192.168.1.20.evil.example', 421],
  ['its number', '192.168.1.20:4180', 200],
  ['its number of the sixth version', '[fe80::1]:4180', 200],
  ['its name', `${hostname()}.local:4180`, 200],
])('on the network a request by %s is answered', async (_by, host, status) => {
  const { ask } = await onNetwork();
  expect((await ask({ url: '/api/health', headers: { host } })).statusCode).toBe(status);
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
