import type { Discarded, DiscardReason, Framed, Framer } from './framed.ts';

const LF = 0x0a;
const CR = 0x0d;

/** The longest frame, framing bytes included; a reply of the standard is 20, a line about the scale 27. */
const MAX_FRAME = 64;

/**
 * Cuts out frames that begin with LF and end with CR, each as soon as its CR arrives.
 *
 * Waiting for the next LF, as a splitter of lines would, shows every weight one poll late. Needs no
 * synchronising: a frame begins with a byte of its own, and what lies between frames is discarded.
 */
export class SmaFramer implements Framer {
  readonly #text: Buffer = Buffer.alloc(MAX_FRAME - 2);
  #inFrame = false;
  #held = 0;
  #printable = true;
  #outside = 0;

  get pendingBytes(): number {
    return this.#inFrame ? this.#held + 1 : this.#outside;
  }

  push(chunk: Uint8Array): Framed[] {
    const framed: Framed[] = [];
    for (const byte of chunk) {
      if (byte === LF) this.#begin(framed);
      else if (!this.#inFrame) this.#skip(framed);
      else if (byte === CR) this.#finish(framed);
      else this.#keep(byte, framed);
    }
    return framed;
  }

  #begin(framed: Framed[]): void {
    if (this.pendingBytes > 0) framed.push(this.#discard(this.#inFrame ? 'broken-off' : 'outside-frame'));
    this.#inFrame = true;
  }

  #finish(framed: Framed[]): void {
    if (!this.#printable) {
      this.#held += 1;
      framed.push(this.#discard('not-ascii'));
      return;
    }
    framed.push({ kind: 'line', text: this.#text.toString('latin1', 0, this.#held) });
    this.#clear();
  }

  #keep(byte: number, framed: Framed[]): void {
    if (this.#held === this.#text.length) {
      framed.push(this.#discard('too-long'));
      this.#skip(framed);
      return;
    }
    if (byte < 0x20 || byte > 0x7e) this.#printable = false;
    this.#text[this.#held] = byte;
    this.#held += 1;
  }

  #skip(framed: Framed[]): void {
    this.#outside += 1;
    // Noise without end is reported now and then rather than counted for ever.
    if (this.#outside === MAX_FRAME) framed.push(this.#discard('outside-frame'));
  }

  #discard(reason: DiscardReason): Discarded {
    const bytes = this.pendingBytes;
    this.#clear();
    return { kind: 'discarded', bytes, reason };
  }

  #clear(): void {
    this.#inFrame = false;
    this.#held = 0;
    this.#printable = true;
    this.#outside = 0;
  }
}
