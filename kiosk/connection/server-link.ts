import type { ClientMessage, ServerMessage } from '../../shared/message.ts';
import { isOfAnotherPage, messageIn } from './message-in.ts';

/** The parts of a browser's socket that the link uses. */
export type SocketLike = Pick<
  WebSocket,
  'onopen' | 'onmessage' | 'onclose' | 'onerror' | 'send' | 'close' | 'bufferedAmount'
>;

/** What the link is made of and whom it tells. */
export interface ServerLinkOptions {
  readonly open: () => SocketLike;
  /** The script this page began with, by its file name; `null` where that is not known. */
  readonly page: string | null;
  readonly onMessage: (message: ServerMessage) => void;
  /** The connection is gone, or says nothing any more. */
  readonly onCut: () => void;
  /** Something came that this page does not understand. */
  readonly onMismatch: () => void;
}

const PING_MS = 2000;
/** Nothing heard for this long means that nothing on the screen may count as current. */
const SILENT_MS = 5000;
/** Sound that waits longer than this, in bytes, is a second old at the ear's rate, and no use any more. */
const SOUND_BACKLOG = 32_000;
const FIRST_RETRY_MS = 250;
const LONGEST_RETRY_MS = 2000;

/** Keeps one socket to the server: pings it, gives it up when it falls silent, and opens the next. */
export class ServerLink {
  readonly #options: ServerLinkOptions;
  #socket: SocketLike | null = null;
  #pinging: ReturnType<typeof setInterval> | undefined;
  #watchdog: ReturnType<typeof setTimeout> | undefined;
  #retry: ReturnType<typeof setTimeout> | undefined;
  #retryMs = FIRST_RETRY_MS;

  constructor(options: ServerLinkOptions) {
    this.#options = options;
  }

  /** Opens a socket, now. */
  start(): void {
    this.stop();
    const socket = this.#options.open();
    this.#socket = socket;
    // A socket that was given up may still call back; only the one in use is listened to.
    socket.onmessage = ({ data }) => {
      if (this.#socket === socket) this.#hear(data);
    };
    socket.onclose = () => {
      if (this.#socket === socket) this.#lose();
    };
    socket.onerror = null;
    socket.onopen = () => {
      if (this.#socket !== socket) return;
      this.#pinging = setInterval(() => this.send({ type: 'ping' }), PING_MS);
    };
    this.#watch();
  }

  /** Lets the socket go and opens no other. */
  stop(): void {
    clearInterval(this.#pinging);
    clearTimeout(this.#watchdog);
    clearTimeout(this.#retry);
    const socket = this.#socket;
    this.#socket = null;
    socket?.close();
  }

  /** Sends a message if a socket is there; the caller learns the outcome from the state, not from here. */
  send(message: ClientMessage): void {
    this.#socket?.send(JSON.stringify(message));
  }

  /** Sends sound, or drops it where what was sent before has not left yet. */
  sendSound(samples: ArrayBuffer): void {
    if (this.#socket !== null && this.#socket.bufferedAmount < SOUND_BACKLOG) this.#socket.send(samples);
  }

  #watch(): void {
    clearTimeout(this.#watchdog);
    this.#watchdog = setTimeout(() => this.#lose(), SILENT_MS);
  }

  #hear(data: unknown): void {
    const message = messageIn(data);
    if (message === null || isOfAnotherPage(message, this.#options.page)) {
      this.#options.onMismatch();
      this.#reopenLater();
      return;
    }
    this.#watch();
    if (message.type === 'snapshot') this.#retryMs = FIRST_RETRY_MS;
    this.#options.onMessage(message);
  }

  #lose(): void {
    this.#options.onCut();
    this.#reopenLater();
  }

  #reopenLater(): void {
    this.stop();
    this.#retry = setTimeout(() => this.start(), this.#retryMs);
    this.#retryMs = Math.min(LONGEST_RETRY_MS, this.#retryMs * 2);
  }
}
