import type { SocketLike } from '../../kiosk/connection/server-link.ts';
import type { ClientMessage, ServerMessage } from '../../shared/message.ts';
import type { KioskState } from '../../shared/state.ts';

/** A socket in memory: what the page sends is kept, what the server says is put in by hand. */
export class FakeSocket implements SocketLike {
  onopen: SocketLike['onopen'] = null;
  onmessage: SocketLike['onmessage'] = null;
  onclose: SocketLike['onclose'] = null;
  onerror: SocketLike['onerror'] = null;
  /** Bytes that have not left yet, as the browser would tell it. */
  bufferedAmount = 0;
  readonly sent: ClientMessage[] = [];
  readonly sounds: ArrayBuffer[] = [];
  closed = false;

  send(data: string | ArrayBuffer): void {
    if (typeof data !== 'string') this.sounds.push(data);
    else this.sent.push(JSON.parse(data) as ClientMessage);
  }

  close(): void {
    this.closed = true;
  }

  /** Opens, as the browser would tell it. */
  open(): void {
    this.onopen?.call(this as unknown as WebSocket, new Event('open'));
  }

  /** Says something of any kind, fit or not. */
  say(text: string): void {
    this.onmessage?.call(this as unknown as WebSocket, new MessageEvent('message', { data: text }));
  }

  /** Says a message. */
  tell(message: ServerMessage): void {
    this.say(JSON.stringify(message));
  }

  /** Greets and sends the whole state. */
  welcome(state: KioskState, seq = 1): void {
    this.open();
    this.tell({ type: 'hello', protocol: 1, bootId: state.bootId, page: null, visitor: { kind: 'board' } });
    this.tell({ type: 'snapshot', seq, state });
  }

  /** Closes from the far end. */
  drop(): void {
    this.onclose?.call(this as unknown as WebSocket, new Event('close') as CloseEvent);
  }

  /** The intents sent so far. */
  get intents(): Extract<ClientMessage, { type: 'intent' }>['intent'][] {
    return this.sent.flatMap((message) => (message.type === 'intent' ? [message.intent] : []));
  }
}
