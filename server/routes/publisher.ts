import type { ServerMessage } from '../../shared/message.ts';
import type { KioskState } from '../../shared/state.ts';

/** The four things asked of a connection; a socket has them, and so has a test. */
export interface Subscriber {
  send(text: string): void;
  /** Bytes not yet on the wire. */
  readonly backlog: number;
}

/** A subscriber further behind than this gets nothing until it has caught up, and then the whole state. */
const MOST_BACKLOG = 256 * 1024;

type Key = keyof KioskState;

/** The clock, and what changes with nothing but time, is told this often. */
const CLOCK_MS = 1000;

/**
 * Tells every subscriber what changed in the state, as patches of its top-level parts.
 *
 * Call `flush` as often as the screen should move: it looks only where the revision has grown or a second has passed.
 */
export class Publisher {
  readonly #build: () => KioskState;
  readonly #revision: () => number;
  #seen = -1;
  readonly #subscribers = new Map<Subscriber, { stale: boolean }>();
  readonly #sent = new Map<Key, { readonly part: unknown; readonly text: string }>();
  #seq = 0;
  #toldAt = Number.NEGATIVE_INFINITY;

  constructor(build: () => KioskState, revision: () => number) {
    this.#build = build;
    this.#revision = revision;
  }

  /** Adds a subscriber and sends it the whole state. */
  add(subscriber: Subscriber): void {
    this.#subscribers.set(subscriber, { stale: false });
    this.#sendWhole(subscriber);
  }

  remove(subscriber: Subscriber): void {
    this.#subscribers.delete(subscriber);
  }

  /** Sends what changed since the last flush; `uptimeMs` paces the clock. */
  flush(uptimeMs: number): void {
    // Whoever comes gets the whole state.
    if (this.#subscribers.size === 0) return;
    const revision = this.#revision();
    if (revision === this.#seen && uptimeMs - this.#toldAt < CLOCK_MS) return;
    this.#seen = revision;
    this.#toldAt = uptimeMs;
    const text = JSON.stringify({
      type: 'patch',
      seq: ++this.#seq,
      changes: this.#changesOf(this.#build()),
    } satisfies ServerMessage);
    for (const [subscriber, status] of this.#subscribers) {
      if (subscriber.backlog > MOST_BACKLOG) status.stale = true;
      else if (status.stale) {
        status.stale = false;
        this.#sendWhole(subscriber);
      } else subscriber.send(text);
    }
  }

  #changesOf(state: KioskState): Partial<KioskState> {
    const changes: Partial<Record<Key, unknown>> = { now: state.now };
    for (const key of Object.keys(state) as Key[]) {
      const part = state[key];
      const before = this.#sent.get(key);
      // A part that is the same object was not worked out anew, so it need not be written out to be compared.
      if (before !== undefined && typeof part === 'object' && before.part === part) continue;
      const text = JSON.stringify(part);
      this.#sent.set(key, { part, text });
      if (before?.text !== text) changes[key] = part;
    }
    return changes as Partial<KioskState>;
  }

  #sendWhole(subscriber: Subscriber): void {
    const message: ServerMessage = { type: 'snapshot', seq: this.#seq, state: this.#build() };
    subscriber.send(JSON.stringify(message));
  }
}
