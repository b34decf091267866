import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { WebSocket } from 'ws';
import type { Network } from '../../../server/network/network.ts';
import { ServerMessage } from '../../../shared/message.ts';
import type { DeviceRight } from '../../../shared/network.ts';
import { closedNetwork } from './closed-network.ts';
import { type Heard, testApp } from './test-app.ts';
import { type TestBarn, testBarn } from './test-barn.ts';

type Headers = Readonly<Record<string, string>>;

/** A kiosk with its door for a proxy open: the cheapest way to come in as another device. */
export interface NetworkApp {
  readonly barn: TestBarn;
  readonly network: Network;
  /** What the ear was told by pages. */
  readonly heard: readonly Heard[];
  readonly app: Awaited<ReturnType<typeof testApp>>['app'];
  /** Both doors, such as `http://127.0.0.1:4180`. */
  readonly doors: { readonly board: string; readonly proxy: string };
  /** Asks at the proxy's door, as a device does through a proxy that says it was asked by https. */
  ask(path: string, options?: { method?: string; headers?: Headers; body?: unknown }): Promise<Response>;
  /** Pairs a device; comes to the cookie it got. */
  pair(right: DeviceRight): Promise<string>;
  /** Puts a person to work on the device of a cookie, whose PIN is then 2580. */
  work(cookie: string, person: string): Promise<void>;
  /** Opens a page's socket on the device of a cookie. */
  page(cookie: string): Promise<DevicePage>;
  close(): Promise<void>;
}

/** A page on another device. */
export interface DevicePage {
  readonly received: ServerMessage[];
  /** The code with which its socket was closed. */
  readonly closed: Promise<number>;
  send(message: unknown): void;
}

/** Opens such a kiosk. */
export async function networkApp(): Promise<NetworkApp> {
  const port = await freePort();
  const network = closedNetwork({
    config: { on: true, port: 0, proxy: { port, name: 'kiosk.example' } },
  });
  const barn = testBarn(':memory:', undefined, { network });
  const { app, heard } = await testApp(null, barn, null, network);
  const board = await app.listen({ port: 0, host: '127.0.0.1' });
  // The second door opens behind the first.
  while (!network.view().address) await new Promise((resolve) => setTimeout(resolve, 5));
  const proxy = `http://127.0.0.1:${port}`;
  const ask: NetworkApp['ask'] = (path, { method = 'GET', headers = {}, body } = {}) =>
    fetch(`${proxy}${path}`, {
      method,
      headers: {
        'x-forwarded-proto': 'https',
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
  return {
    barn,
    network,
    heard,
    app,
    doors: { board, proxy },
    ask,
    async pair(right) {
      network.pair(right);
      const code = network.pairingCode()?.code;
      const answer = await ask('/api/pair', { method: 'POST', body: { code } });
      return (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
    },
    async work(cookie, person) {
      await network.setPin(person, '2580');
      const body = { person, pin: '2580' };
      const answer = await ask('/api/session', { method: 'POST', headers: { cookie }, body });
      if (!answer.ok) throw new Error(`not signed in: ${await answer.text()}`);
    },
    async page(cookie) {
      const headers = { cookie, 'x-forwarded-proto': 'https' };
      const socket = new WebSocket(`${proxy.replace('http', 'ws')}/ws`, { headers });
      const received: ServerMessage[] = [];
      socket.on('message', (raw) => received.push(ServerMessage.parse(JSON.parse(String(raw)))));
      const closed = new Promise<number>((resolve) => socket.on('close', resolve));
      socket.on('error', () => {});
      await new Promise<void>((resolve, reject) => {
        socket.on('open', resolve);
        socket.on('error', reject);
      });
      return { received, closed, send: (message) => socket.send(JSON.stringify(message)) };
    },
    close: () => app.close(),
  };
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  await new Promise((resolve) => server.close(resolve));
  return port;
}
