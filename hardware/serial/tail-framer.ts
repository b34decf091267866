import type { Framed, Framer } from './framed.ts';

/** A frame that ends with a byte of its own but begins with one that also stands within it. */
export interface TailRule {
  /** The last byte, which occurs nowhere else in a frame. */
  readonly end: number;
  /** The longest frame, first and last byte included. */
  readonly maxFrame: number;
  /** Finds a whole frame, less its last byte, at the end of what came before; its first character is framing. */
  readonly shape: RegExp;
}

/**
 * Cuts out frames from behind: at each last byte it looks back for where the frame must have begun.
 *
 * What stands before that beginning is discarded. Holds twice the longest frame at most.
 */
export class TailFramer implements Framer {
  readonly #rule: TailRule;
  readonly #held: Buffer;
  #count = 0;

  constructor(rule: TailRule) {
    this.#rule = rule;
    this.#held = Buffer.alloc(2 * rule.maxFrame);
  }

  get pendingBytes(): number {
    return this.#count;
  }

  push(chunk: Uint8Array): Framed[] {
    const framed: Framed[] = [];
    for (const byte of chunk) {
      if (byte === this.#rule.end) this.#finish(framed);
      else this.#keep(byte, framed);
    }
    return framed;
  }

  #finish(framed: Framed[]): void {
    const all = this.#held.toString('latin1', 0, this.#count);
    const at = all.search(this.#rule.shape);
    this.#count = 0;
    if (at < 0) {
      framed.push({ kind: 'discarded', bytes: all.length + 1, reason: 'broken-off' });
      return;
    }
    if (at > 0) framed.push({ kind: 'discarded', bytes: at, reason: 'outside-frame' });
    framed.push({ kind: 'line', text: all.slice(at + 1) });
  }

  #keep(byte: number, framed: Framed[]): void {
    if (this.#count === this.#held.length) {
      // The later half may be the beginning of a frame; the earlier one can no more be part of any.
      const { maxFrame } = this.#rule;
      this.#held.copyWithin(0, maxFrame);
      this.#count -= maxFrame;
      framed.push({ kind: 'discarded', bytes: maxFrame, reason: 'outside-frame' });
    }
    this.#held[this.#count] = byte;
    this.#count += 1;
  }
}
