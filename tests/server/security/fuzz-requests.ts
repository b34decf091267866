import type { AddressInfo } from 'node:net';
import { WebSocket } from 'ws';
import { between, type Random, seededRandom } from '../../../hardware/simulator/random.ts';
import { buildApp } from '../../../server/app.ts';
import { INTENTS } from '../../shared/make.ts';
import { networkApp } from '../make/network-app.ts';
import { testApp } from '../make/test-app.ts';

const PATHS = [
  '/',
  '/ws',
  '/api/health',
  '/api/state',
  '/api/treatments',
  '/api/animals',
  '/api/jugs',
  '/api/schema',
  '/api/intents',
  '/api/photos',
  '/api/import',
  '/api/weather-import',
  '/api/exports',
  '/api/exports/register',
  '/api/day-book',
  '/api/checks',
  '/api/stock',
  '/api/season',
  '/api/whom-to-treat',
  '/api/egg-counts',
  '/api/reduction-tests',
  '/api/groups',
  '/api/speech',
  '/api/pair',
  '/api/session',
  '/api/pins',
  '/api/network/pairing',
  '/print/jug',
  '/print/group',
  '/print/register',
] as const;
const METHODS = ['GET', 'GET', 'POST', 'POST', 'PUT', 'DELETE', 'PATCH', 'HEAD', 'OPTIONS'] as const;
const TYPES = [
  'application/json',
  'text/csv',
  'application/octet-stream',
  'image/jpeg',
  'text/plain',
  'no/such',
] as const;
const ODD = [
  '',
  '..',
  '%00',
  '%',
  '../../etc/passwd',
  'null',
  '-1',
  '1e400',
  'constructor',
  '__proto__',
  '<script>',
  '\u{1F410}',
  "' OR 1",
];
/** Names of files and places inside a program, such as a stack trace holds. */
const TRACE = /\bat .{0,200}\.[cm]?[jt]s:\d+|node_modules|node:internal/;
/** What may be answered from 500 on: not configured, and a disk that takes nothing. */
const TOLD = [503, 507];

/** What a run found. */
export interface RequestsReport {
  readonly requests: number;
  readonly messages: number;
  /** Answers of the server's own failure, or that show its insides; must be empty. */
  readonly faults: readonly string[];
  /** Requests of devices that may follow only, or act for nobody yet, that were let in. */
  readonly letIn: number;
  /** Changes that requests of other machines and of such devices made; must be 0. */
  readonly changes: number;
}

/**
 * Sends made-up requests to a server: a third from machines it does not know, a third from devices paired with it, and
 * each tenth input as a message on the socket.
 */
export async function fuzzRequests(inputs: number, seed: number): Promise<RequestsReport> {
  const random = seededRandom(seed);
  const { house, test: barn } = await testApp();
  const app = await buildApp(house, '0.0.0.0', null);
  const faults: string[] = [];
  const counts = { requests: 0, messages: 0 };
  const judge = ({ method, url, payload }: Asked, status: number, body: string) => {
    counts.requests += 1;
    if ((status >= 500 && !TOLD.includes(status)) || TRACE.test(body))
      faults.push(`${method} ${url} ${payload.slice(0, 200)}: ${status}`);
  };
  const ask = async (remoteAddress: string) => {
    const asked = request(random);
    const answer = await app.inject({ ...asked, remoteAddress });
    judge(asked, answer.statusCode, answer.body);
  };
  try {
    const messages = Math.floor(inputs / 10);
    const others = Math.floor((inputs - messages) / 3);
    const before = barn.barn.revision();
    // Each from a machine of its own, so that none is turned away for its pace.
    for (let i = 0; i < others; i += 1) await ask(`10.${i >> 16}.${(i >> 8) & 255}.${i & 255}`);
    const byStrangers = barn.barn.revision() - before;
    const devices = await asDevices(others, random, judge);
    for (let i = 0; i < inputs - messages - 2 * others; i += 1) await ask('127.0.0.1');
    await app.listen({ port: 0, host: '127.0.0.1' });
    const { port } = app.server.address() as AddressInfo;
    while (counts.messages < messages)
      counts.messages += await talk(port, random, messages - counts.messages, faults);
    return { ...counts, faults, letIn: devices.letIn, changes: byStrangers + devices.changes };
  } finally {
    await app.close();
  }
}

/** Asks as two devices by turns: one that may follow only, and one on which nobody works. */
async function asDevices(
  requests: number,
  random: Random,
  judge: (asked: Asked, status: number, body: string) => void,
): Promise<{ readonly letIn: number; readonly changes: number }> {
  const kiosk = await networkApp();
  try {
    const cookies = [await kiosk.pair('follow'), await kiosk.pair('act')];
    const before = kiosk.barn.barn.revision();
    let letIn = 0;
    for (let i = 0; i < requests; i += 1) {
      const asked = request(random);
      const answer = await fetch(`${kiosk.doors.proxy}${asked.url}`, {
        method: asked.method,
        headers: {
          'content-type': asked.headers['content-type'],
          'x-forwarded-proto': 'https',
          'x-forwarded-for': `10.${i >> 16}.${(i >> 8) & 255}.${i & 255}`,
          cookie: cookies[i % cookies.length] ?? '',
        },
        ...(['GET', 'HEAD'].includes(asked.method) ? {} : { body: asked.payload }),
      });
      if (answer.status !== 401) letIn += 1;
      judge(asked, answer.status, await answer.text());
    }
    return { letIn, changes: kiosk.barn.barn.revision() - before };
  } finally {
    await kiosk.close();
  }
}

function one<T>(random: Random, all: readonly T[]): T {
  return all[Math.floor(random() * all.length)] as T;
}

interface Asked {
  readonly method: (typeof METHODS)[number];
  readonly url: string;
  readonly headers: { readonly host: string; readonly 'content-type': string };
  readonly payload: string;
}

function request(random: Random): Asked {
  const below = random() < 0.5 ? '' : `/${encodeURIComponent(one(random, ODD))}`;
  const query =
    random() < 0.5
      ? ''
      : `?${one(random, ['paper', 'from', 'before', 'name', 'count', 'without'])}=${encodeURIComponent(one(random, ODD))}`;
  return {
    method: one(random, METHODS),
    url: `${one(random, PATHS)}${below}${query}`,
    headers: { host: 'localhost:4180', 'content-type': one(random, TYPES) },
    payload: body(random),
  };
}

/** An intent as it should be, one with a part replaced, torn, or noise. */
function body(random: Random): string {
  const intent: Record<string, unknown> = {
    ...one(random, Object.values(INTENTS)),
    id: `f${Math.floor(random() * 1e9)}`,
  };
  const kind = random();
  if (kind < 0.2) return JSON.stringify(intent);
  if (kind < 0.6) {
    intent[one(random, [...Object.keys(intent), 'extra'])] = one(random, [
      ...ODD,
      null,
      [],
      {},
      1e308,
      -0,
      'x'.repeat(5000),
    ]);
    return JSON.stringify(intent);
  }
  const text = JSON.stringify(intent);
  if (kind < 0.8) return text.slice(0, Math.floor(random() * text.length));
  return String.fromCharCode(...Array.from({ length: 40 }, () => Math.floor(between(random, 0, 0x250))));
}

/** Talks to the socket until it closes or `most` messages are out; comes to how many there were. */
async function talk(port: number, random: Random, most: number, faults: string[]): Promise<number> {
  const socket = new WebSocket(`ws://127.0.0.1:${port}/ws`);
  let sent = 0;
  let open = true;
  const closed = new Promise<void>((resolve) => {
    socket.on('close', () => {
      open = false;
      resolve();
    });
  });
  socket.on(
    'message',
    (raw) => TRACE.test(String(raw)) && faults.push(`the socket says ${String(raw).slice(0, 300)}`),
  );
  await new Promise((resolve, reject) => socket.once('open', resolve).once('error', reject));
  while (open && sent < most) {
    const text = body(random);
    socket.send(
      random() < 0.5
        ? `{"type":"intent","intent":${text}}`
        : one(random, [text, Buffer.from(text), '{"type":"ping"}']),
    );
    sent += 1;
    await new Promise(setImmediate);
  }
  socket.close();
  await closed;
  return sent;
}
