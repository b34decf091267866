import websocket from '@fastify/websocket';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { RawData, WebSocket } from 'ws';
import { ClientMessage, PROTOCOL, type ServerMessage } from '../../shared/message.ts';
import type { VisitorView } from '../../shared/network.ts';
import type { EarPage } from '../ear/page-microphones.ts';
import type { House } from '../house.ts';
import { Pace } from '../security/pace.ts';
import type { Visitor } from '../security/visitor.ts';
import type { Loudspeaker } from '../speech/loudspeakers.ts';
import { answerTo } from './http.ts';
import { paced } from './paced.ts';
import { Publisher, type Subscriber } from './publisher.ts';

/** The least time between two tellings of a screen, and the most: its clock goes on while nothing else changes. */
const LEAST_MS = 10;
const MOST_MS = 500;
/** A page that has not been heard of for this long is gone. */
const SILENT_MS = 15_000;
/** How long a page has to answer that the server is stopping. */
const PARTING_MS = 1000;
/** The largest message taken from a page. */
const MAX_PAYLOAD = 64 * 1024;
/** How many pages of other devices may be open at once, and how many messages each may send. */
const MOST_PAGES = 32;
const MESSAGES_PER_SECOND = 10;
const MESSAGES_AT_ONCE = 40;

/** What all sockets share. */
interface Sockets {
  readonly house: House;
  readonly publisher: Publisher;
  /** The script of the page given out. */
  readonly script: string | null;
  /** Pages of other devices. */
  readonly others: Set<WebSocket>;
}

/** The socket at `/ws`: a greeting, the state, patches; the intents of the page, and the sound of its microphone. `script` is the page given out. */
export async function addSocket(app: FastifyInstance, house: House, script: string | null): Promise<void> {
  await app.register(websocket, {
    options: { maxPayload: MAX_PAYLOAD, perMessageDeflate: false },
    // Says "going away" instead of cutting the line.
    preClose(done) {
      const { clients } = this.websocketServer;
      for (const client of clients) client.close(1001, 'the server is stopping');
      // A page that does not read would hold up the end until it counts as gone.
      const cut = setTimeout(() => clients.forEach((client) => void client.terminate()), PARTING_MS);
      this.websocketServer.close(() => {
        clearTimeout(cut);
        done();
      });
    },
  });
  const publisher = new Publisher(() => house.state(), house.barn.revision);
  const telling = paced(() => publisher.flush(performance.now()), LEAST_MS);
  const unwatch = house.barn.watch(telling.soon);
  const timer = setInterval(telling.soon, MOST_MS);
  app.addHook('onClose', async () => {
    clearInterval(timer);
    unwatch();
    telling.stop();
  });
  const sockets: Sockets = { house, publisher, script, others: new Set() };
  app.get('/ws', { websocket: true }, (socket, request) => serve(socket, request, sockets));
}

function serve(
  socket: WebSocket,
  request: FastifyRequest,
  { house, publisher, script, others }: Sockets,
): void {
  const arrived = request.visitor;
  const own = arrived.kind === 'board';
  if (!own) {
    if (others.size >= MOST_PAGES) {
      socket.close(1013, 'too many pages are open already');
      return;
    }
    others.add(socket);
  }
  const pace = new Pace(MESSAGES_PER_SECOND, MESSAGES_AT_ONCE);
  const say = (message: ServerMessage) => socket.send(JSON.stringify(message));
  const subscriber: Subscriber = {
    send: (text) => socket.send(text),
    get backlog() {
      return socket.bufferedAmount;
    },
  };
  const page: Loudspeaker & EarPage = { own, send: say };
  let heardAt = performance.now();
  const watch = setInterval(() => {
    if (performance.now() - heardAt > SILENT_MS) socket.terminate();
  }, SILENT_MS / 3);

  socket.on('message', (raw: RawData, isBinary: boolean) => {
    heardAt = performance.now();
    if (!own && !pace.allows('page', heardAt)) return socket.close(1008, 'too many messages');
    // A page of another device neither speaks nor listens for the kiosk.
    if (isBinary && !own) return;
    if (isBinary) return house.hearing.sound(page, bytesOf(raw));
    const message = parse(raw);
    if (message === null) socket.close(1008, 'not a message this server knows');
    else if (message.type === 'ping') say({ type: 'pong' });
    else if (message.type === 'intent') {
      // Asked anew each time: its right or its person may be gone since the socket was opened.
      say({ type: 'answer', answer: answerTo(house, message.intent, house.network.visitorOf(request)) });
      publisher.flush(performance.now());
    } else if (!own) return;
    else if (message.type === 'microphone' || message.type === 'talk') house.hearing.told(page, message);
    else house.pages.told(page, message);
  });
  const left =
    arrived.kind === 'device'
      ? house.network.opened(arrived, {
          close: () => socket.close(1008, 'this device is let in no more'),
          tell: (visitor) => say({ type: 'visitor', visitor }),
        })
      : () => {};
  socket.on('close', () => {
    clearInterval(watch);
    others.delete(socket);
    left();
    publisher.remove(subscriber);
    house.pages.gone(page);
    house.hearing.gone(page);
  });
  say({
    type: 'hello',
    protocol: PROTOCOL,
    bootId: house.standing.bootId,
    page: script,
    visitor: visitorView(arrived),
  });
  publisher.add(subscriber);
}

/** A visitor as its page is told of it; a stranger is let in to no socket. */
function visitorView(visitor: Visitor): VisitorView {
  if (visitor.kind !== 'device') return { kind: 'board' };
  return { kind: 'device', right: visitor.right, person: visitor.person };
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
