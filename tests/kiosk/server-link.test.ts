import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { ServerLink } from '../../kiosk/connection/server-link.ts';
import { FakeSocket } from './fake-socket.ts';
import { BASE } from './preview/base-state.ts';

let sockets: FakeSocket[];
const heard = { onMessage: vi.fn(), onCut: vi.fn(), onMismatch: vi.fn() };
let link: ServerLink;

function current(): FakeSocket {
  const socket = sockets.at(-1);
  if (socket === undefined) throw new Error('no socket was opened');
  return socket;
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.clearAllMocks();
  sockets = [];
  link = new ServerLink({
    open: () => {
      sockets.push(new FakeSocket());
      return current();
    },
    page: 'index-mine.js',
    ...heard,
  });
  link.start();
});

afterEach(() => {
  link.stop();
  vi.useRealTimers();
});

test('it pings every two seconds while it is answered', () => {
  current().welcome(BASE);
  for (let second = 0; second < 10; second += 1) {
    vi.advanceTimersByTime(1000);
    current().tell({ type: 'pong' });
  }
  expect(current().sent).toEqual(Array.from({ length: 5 }, () => ({ type: 'ping' })));
  expect(sockets).toHaveLength(1);
  expect(heard.onCut).not.toHaveBeenCalled();
});

test('five seconds of silence cut it, close the socket and open another', () => {
  const first = current();
  first.welcome(BASE);
  vi.advanceTimersByTime(4999);
  expect(heard.onCut).not.toHaveBeenCalled();
  vi.advanceTimersByTime(1);
  expect(heard.onCut).toHaveBeenCalledOnce();
  expect(first.closed).toBe(true);
  vi.advanceTimersByTime(250);
  expect(sockets).toHaveLength(2);
});

test('a socket that never opens is given up too', () => {
  vi.advanceTimersByTime(5250);
  expect(sockets).toHaveLength(2);
});

test('the wait between tries doubles up to two seconds, and starts anew after a snapshot', () => {
  const waits: number[] = [];
  for (let round = 0; round < 5; round += 1) {
    current().drop();
    const before = sockets.length;
    let waited = 0;
    while (sockets.length === before) {
      vi.advanceTimersByTime(50);
      waited += 50;
    }
    waits.push(waited);
  }
  expect(waits).toEqual([250, 500, 1000, 2000, 2000]);
  current().welcome(BASE);
  current().drop();
  vi.advanceTimersByTime(250);
  expect(sockets).toHaveLength(7);
});

test('a socket that was given up is not listened to any more', () => {
  const first = current();
  first.welcome(BASE);
  first.drop();
  vi.advanceTimersByTime(250);
  heard.onMessage.mockClear();
  first.tell({ type: 'pong' });
  first.drop();
  expect(heard.onMessage).not.toHaveBeenCalled();
  expect(heard.onCut).toHaveBeenCalledOnce();
});

test.each([
  'not json',
  '[]',
  '{"type":"toString"}',
  '{"type":"hello","protocol":2,"bootId":"b","page":null}',
  '{"type":"hello","protocol":1,"bootId":"b","page":"index-new.js"}',
])('what it does not understand is a mismatch, not a state: %s', (text) => {
  current().open();
  current().say(text);
  expect(heard.onMismatch).toHaveBeenCalledOnce();
  expect(heard.onMessage).not.toHaveBeenCalled();
  expect(current().closed).toBe(true);
});

test.each([null, 'index-mine.js'])(
  'a server that gives out this page, or none, is understood: %s',
  (page) => {
    current().open();
    current().tell({ type: 'hello', protocol: 1, bootId: 'b', page, visitor: { kind: 'board' } });
    expect(heard.onMismatch).not.toHaveBeenCalled();
    expect(heard.onMessage).toHaveBeenCalledOnce();
  },
);

test('stopped, it opens nothing any more', () => {
  link.stop();
  vi.advanceTimersByTime(60_000);
  expect(sockets).toHaveLength(1);
});
