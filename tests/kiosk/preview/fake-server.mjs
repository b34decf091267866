import { createReadStream, existsSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { WebSocketServer } from 'ws';

const TYPES = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/** Whose page it is unless told otherwise. */
const BOARD = { kind: 'board' };

/**
 * Serves a built kiosk and stands in for its server: every page gets the state that is set, and pongs.
 *
 * @param {string} root folder of the built kiosk
 * @returns {Promise<{ url: string, show: (state: unknown, http?: Record<string, unknown>, visitor?: { kind: string }) => void, tell: (changes: unknown) => void, received: unknown[], told: unknown[], sounds: Buffer[], close: () => Promise<void> }>}
 */
export async function startFakeServer(root) {
  let state;
  let answers = {};
  let seq = 1;
  let visitor = BOARD;
  const received = [];
  const told = [];
  const sounds = [];
  const http = createServer((request, response) => {
    const path = normalize(new URL(request.url ?? '/', 'http://kiosk').pathname);
    if (typeof answers[path] === 'string') {
      response.writeHead(200, { 'content-type': TYPES[extname(path)] ?? 'text/plain' }).end(answers[path]);
      return;
    }
    if (path in answers) {
      const drawn = typeof answers[path] === 'string';
      const type = drawn ? 'image/svg+xml' : 'application/json';
      response
        .writeHead(200, { 'content-type': type })
        .end(drawn ? answers[path] : JSON.stringify(answers[path]));
      return;
    }
    const file = join(root, path === '/' ? 'index.html' : path);
    if (!file.startsWith(root) || !existsSync(file)) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, {
      'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
      // The strictest policy the product may be served under: the pictures prove that the page lives with it.
      'content-security-policy': "default-src 'self'",
    });
    createReadStream(file).pipe(response);
  });
  const sockets = new WebSocketServer({ server: http, path: '/ws' });
  sockets.on('connection', (socket) => {
    socket.on('error', () => undefined);
    if (visitor.kind === 'stranger') return socket.close();
    socket.send(
      JSON.stringify({
        type: 'hello',
        protocol: 1,
        bootId: state.bootId,
        page: null,
        visitor,
      }),
    );
    socket.send(JSON.stringify({ type: 'snapshot', seq, state }));
    socket.on('message', (data, binary) => {
      if (binary) {
        sounds.push(data);
        return;
      }
      const message = JSON.parse(String(data));
      if (message.type === 'ping') socket.send(JSON.stringify({ type: 'pong' }));
      else if (message.type === 'intent') received.push(message.intent);
      else told.push(message);
    });
  });
  await new Promise((resolve) => http.listen(0, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${http.address().port}/`,
    show: (next, http = {}, whose = BOARD) => {
      state = next;
      answers = { '/api/session': whose, ...http };
      visitor = whose;
    },
    tell: (changes) => {
      seq += 1;
      state = { ...state, ...changes };
      for (const socket of sockets.clients) socket.send(JSON.stringify({ type: 'patch', seq, changes }));
    },
    received,
    told,
    sounds,
    close: () =>
      new Promise((resolve) => {
        for (const socket of sockets.clients) socket.terminate();
        http.close(() => resolve());
      }),
  };
}
