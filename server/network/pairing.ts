import { randomInt, timingSafeEqual } from 'node:crypto';
import type { DeviceRight, NetworkView } from '../../shared/network.ts';

/** How long a code may be used. */
export const PAIRING_MS = 120_000;
/** How many wrong codes end a pairing: a guess succeeds once in twenty million pairings. */
const MOST_TRIES = 5;
/** How long the screen says how a pairing ended. */
const TOLD_MS = 60_000;

type Ended = NonNullable<NetworkView['paired']>;

/** The one pairing that may be open. Times are running time in milliseconds. */
export class Pairing {
  #open: { readonly right: DeviceRight; readonly code: string; readonly endsAt: number } | null = null;
  #tries = 0;
  #ended: { readonly how: Ended; readonly at: number } | null = null;

  /** Opens a pairing with a code of eight digits; one that was open ends. */
  open(right: DeviceRight, now: number): void {
    const code = String(randomInt(10 ** 8)).padStart(8, '0');
    this.#open = { right, code, endsAt: now + PAIRING_MS };
    this.#tries = 0;
    this.#ended = null;
  }

  /** Ends the pairing; its code is worth nothing from here on. */
  stop(): void {
    this.#open = null;
  }

  /** The pairing that is open. */
  at(now: number): { readonly right: DeviceRight; readonly code: string; readonly endsAt: number } | null {
    if (this.#open !== null && now >= this.#open.endsAt) this.#end('out-of-time', now);
    return this.#open;
  }

  /** How the last pairing ended, while that is news. */
  endedAt(now: number): Ended | null {
    this.at(now);
    return this.#ended !== null && now - this.#ended.at < TOLD_MS ? this.#ended.how : null;
  }

  /** Tries a code; the right one is used up by it. Comes to what the device may do, or why it is not let in. */
  use(code: string, now: number): DeviceRight | 'wrong' | 'no-pairing' {
    const open = this.at(now);
    if (open === null) return 'no-pairing';
    const given = Buffer.from(code);
    const wanted = Buffer.from(open.code);
    if (given.length === wanted.length && timingSafeEqual(given, wanted)) {
      this.#end('paired', now);
      return open.right;
    }
    this.#tries += 1;
    if (this.#tries >= MOST_TRIES) this.#end('too-many-tries', now);
    return 'wrong';
  }

  #end(how: Ended, at: number): void {
    this.#open = null;
    this.#ended = { how, at };
  }
}
