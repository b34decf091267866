import type { AddressInfo } from 'node:net';
import { afterEach, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { ServerMessage } from '../../../shared/message.ts';
import { networkApp } from '../make/network-app.ts';
import { testApp } from '../make/test-app.ts';

const closers: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of closers.splice(0)) await close();
});

async function connect(options: { origin?: string; headers?: Record<string, string> } = {}) {
  const { app, test: barn, heard } = await testApp();
  await app.listen({ port: 0, host: '127.0.0.1' });
  closers.push(() => app.close());
  const { port } = app.server.address() as AddressInfo;
  const socket = new WebSocket(`ws://127.0.0.1:${port}/ws`, options);
  const received: ServerMessage[] = [];
  socket.on('message', (raw) => received.push(ServerMessage.parse(JSON.parse(String(raw)))));
  const closed = new Promise<number>((resolve) => socket.on('close', resolve));
  return { app, barn, socket, received, closed, heard };
}

async function until(condition: () => boolean): Promise<void> {
  for (let i = 0; i < 200 && !condition(); i += 1) await new Promise((resolve) => setTimeout(resolve, 10));
  expect(condition()).toBe(true);
}

test('a page is greeted, then gets the state, then what changes', async () => {
  const { barn, received, socket } = await connect();
  await until(() => received.length >= 2);
  expect(received[0]).toEqual({
    type: 'hello',
    protocol: 1,
    bootId: 'boot',
    page: null,
    visitor: { kind: 'board' },
  });
  expect(received[1]).toMatchObject({ type: 'snapshot' });
  barn.send({ type: 'set-face', face: 'glare' });
  await until(() => received.some((m) => m.type === 'patch' && m.changes.face === 'glare'));
  socket.close();
});

test('an intent over the socket is answered on it, and a refused one says why', async () => {
  const { received, socket } = await connect();
  await until(() => received.length >= 2);
  socket.send(JSON.stringify({ type: 'intent', intent: { type: 'next', id: 'n1' } }));
  await until(() => received.some((m) => m.type === 'answer'));
  expect(received.find((m) => m.type === 'answer')).toMatchObject({
    answer: { ok: false, id: 'n1', code: 'wrong-state' },
  });
  socket.send(JSON.stringify({ type: 'ping' }));
  await until(() => received.some((m) => m.type === 'pong'));
  socket.close();
});

test.each(['{', '{"type":"shout"}', '{"type":"intent"}'])(
  'the message %s ends the connection and nothing else',
  async (text) => {
    const { app, received, socket, closed } = await connect();
    await until(() => received.length >= 2);
    socket.send(text);
    expect(await closed).toBe(1008);
    expect((await app.inject({ url: '/api/health', headers: { host: 'localhost' } })).statusCode).toBe(200);
  },
);

test('a message too large ends the connection and the server lives on', async () => {
  const { app, received, socket, closed } = await connect();
  await until(() => received.length >= 2);
  socket.send('x'.repeat(100_000));
  expect(await closed).toBe(1009);
  expect((await app.inject({ url: '/api/health', headers: { host: 'localhost' } })).statusCode).toBe(200);
});

test('a page of another machine that is not paired is let in to nothing', async () => {
  const { socket, closed, received } = await connect({ headers: { 'x-forwarded-for': '10.0.0.1' } });
  socket.on('error', () => {});
  expect(await closed).toBe(1006);
  expect(received).toEqual([]);
});

test('the page of a device neither speaks nor listens for the kiosk, and one that never stops talking is let go', async () => {
  const kiosk = await networkApp();
  closers.push(kiosk.close);
  const page = await kiosk.page(await kiosk.pair('set-up'));
  page.send({ type: 'talk', on: true });
  for (let i = 0; i < 100; i += 1) page.send({ type: 'ping' });
  expect(await page.closed).toBe(1008);
  expect(page.received.filter(({ type }) => type === 'pong').length).toBeLessThan(60);
  expect(kiosk.heard).toEqual([]);
});

test('a page of another site is not let in', async () => {
  const { socket, closed } = await connect({ origin: 'http://evil.example' });
  socket.on('error', () => {});
  expect(await closed).toBe(1006);
});

test('when the server stops it says that it is going away', async () => {
  const { app, received, closed } = await connect();
  await until(() => received.length >= 2);
  await app.close();
  expect(await closed).toBe(1001);
});

test('the sound of a page reaches the ear as the bytes it is, between what the page tells of its microphone', async () => {
  const { received, socket, closed, heard } = await connect();
  await until(() => received.length >= 2);
  const opened = { type: 'microphone', rate: 16_000, channels: 1 } as const;
  socket.send(JSON.stringify(opened));
  socket.send(JSON.stringify({ type: 'talk', on: true }));
  socket.send(Buffer.from([1, 2, 3, 255]));
  // Bytes that would be an intent are sound all the same.
  socket.send(Buffer.from('{"type":"ping"}'));
  await until(() => heard.length >= 4);
  const [first, second, third, fourth] = heard;
  expect(first).toMatchObject({ page: { own: true }, message: opened });
  expect(second?.message).toEqual({ type: 'talk', on: true });
  expect([...(third?.frame ?? [])]).toEqual([1, 2, 3, 255]);
  expect(fourth?.frame).toHaveLength(15);
  expect(received.some(({ type }) => type === 'pong')).toBe(false);
  first?.page.send({ type: 'spoken-wish', wish: { type: 'screen', screen: 'home' } });
  await until(() => received.some(({ type }) => type === 'spoken-wish'));
  socket.close();
  await closed;
  await until(() => heard.some(({ gone }) => gone === true));
});
