import websocket from '@fastify/websocket';
import type { FastifyInstance } from 'fastify';
import type { RawData, WebSocket } from 'ws';
import { ClientMessage, PROTOCOL, type ServerMessage } from '../../shared/message.ts';
import type { EarPage } from '../ear/page-microphones.ts';
import type { House } from '../house.ts';
import type { Loudspeaker } from '../speech/loudspeakers.ts';
import { answerTo } from './http.ts';
import { Publisher, type Subscriber } from './publisher.ts';

/** How often a screen may be told of changes. */
const FLUSH_MS = 50;
/** A page that has not been heard of for this long is gone. */
const SILENT_MS = 15_000;
/** The largest message taken from a page. */
const MAX_PAYLOAD = 64 * 1024;
/** Where a page on this very machine comes from. */
const LOOPBACK = /^(::1|(::ffff:)?127\.\d+\.\d+\.\d+)$/;

/** The socket at `/ws`: a greeting, the state, patches; the intents of the page, and the sound of its microphone. `script` is the page given out. */
export async function addSocket(app: FastifyInstance, house: House, script: string | null): Promise<void> {
  await app.register(websocket, {
    options: { maxPayload: MAX_PAYLOAD, perMessageDeflate: false },
    // Says "going away" instead of cutting the line.
    preClose(done) {
      for (const client of this.websocketServer.clients) client.close(1001, 'the server is stopping');
      this.websocketServer.close(done);
    },
  });
  const publisher = new Publisher(() => house.state(), house.barn.revision);
  const timer = setInterval(() => publisher.flush(performance.now()), FLUSH_MS);
  app.addHook('onClose', async () => clearInterval(timer));
  app.get('/ws', { websocket: true }, (socket, { ip }) => serve(socket, { ip, script }, house, publisher));
}

function serve(
  socket: WebSocket,
  { ip, script }: { ip: string; script: string | null },
  house: House,
  publisher: Publisher,
): void {
  const say = (message: ServerMessage) => socket.send(JSON.stringify(message));
  const subscriber: Subscriber = {
    send: (text) => socket.send(text),
    get backlog() {
      return socket.bufferedAmount;
    },
  };
  const page: Loudspeaker & EarPage = { own: LOOPBACK.test(ip), send: say };
  let heardAt = performance.now();
  const watch = setInterval(() => {
    if (performance.now() - heardAt > SILENT_MS) socket.terminate();
  }, SILENT_MS / 3);

  socket.on('message', (raw: RawData, isBinary: boolean) => {
    heardAt = performance.now();
    if (isBinary) return house.hearing.sound(page, bytesOf(raw));
    const message = parse(raw);
    if (message === null) socket.close(1008, 'not a message this server knows');
    else if (message.type === 'ping') say({ type: 'pong' });
    else if (message.type === 'microphone' || message.type === 'talk') house.hearing.told(page, message);
    else if (message.type !== 'intent') house.pages.told(page, message);
    else {
      say({ type: 'answer', answer: answerTo(house, message.intent) });
      publisher.flush(performance.now());
    }
  });
  socket.on('close', () => {
    clearInterval(watch);
    publisher.remove(subscriber);
    house.pages.gone(page);
    house.hearing.gone(page);
  });
  say({ type: 'hello', protocol: PROTOCOL, bootId: house.standing.bootId, page: script });
  publisher.add(subscriber);
}

function bytesOf(raw: RawData): Uint8Array {
  if (Array.isArray(raw)) return Buffer.concat(raw);
  return raw instanceof ArrayBuffer ? new Uint8Array(raw) : raw;
}

function parse(raw: RawData): ClientMessage | null {
  try {
    return ClientMessage.parse(JSON.parse(String(raw)));
  } catch {
    return null;
  }
}
