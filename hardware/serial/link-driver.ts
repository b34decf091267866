import type { Discarded } from './framed.ts';
import type { Poll } from './poller.ts';

/** What a driver makes of the bytes of a connection. `bad` is a whole frame of which nothing could be made. */
export type Received<Item> =
  | { readonly kind: 'item'; readonly item: Item }
  | { readonly kind: 'bad'; readonly fault: string; readonly text: string }
  | Discarded;

/** What was received and came to nothing. */
export type Refused = Exclude<Received<never>, { readonly kind: 'item' }>;

/** What a link must know of the device at its far end. */
export interface LinkDriver<Item> {
  /** A device that sends or answers steadily proves itself by a frame; one that waits for the keeper cannot. */
  readonly readyWhen: 'first-item' | 'settled';
  /** Null for a device that may be silent for hours. */
  readonly silentAfterMs: number | null;
  /** Null for a device that is not asked. */
  readonly poll: Poll | null;
  /** Starts afresh for a new connection; the function returned takes every chunk that arrives on it. */
  openSession(receive: (received: Received<Item>) => void): (chunk: Uint8Array) => void;
}
