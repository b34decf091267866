import type { Discarded, DiscardReason, Framed, Framer } from './framed.ts';

/** The bytes a frame begins and ends with, and how long it may be. */
export interface Brackets {
  readonly begin: number;
  readonly end: number;
  /** The longest frame, these two bytes included. */
  readonly maxFrame: number;
}

/**
 * Cuts out frames of printable ASCII between two bytes of their own, each as soon as its last byte arrives.
 *
 * Waiting for the next frame, as a splitter of lines would, shows every weight one poll late. Needs no
 * synchronising: what lies between frames is discarded.
 */
export class BracketFramer implements Framer {
  readonly #begin: number;
  readonly #end: number;
  readonly #maxFrame: number;
  readonly #text: Buffer;
  #inFrame = false;
  #held = 0;
  #printable = true;
  #outside = 0;

  constructor({ begin, end, maxFrame }: Brackets) {
    this.#begin = begin;
    this.#end = end;
    this.#maxFrame = maxFrame;
    this.#text = Buffer.alloc(maxFrame - 2);
  }

  get pendingBytes(): number {
    return this.#inFrame ? this.#held + 1 : this.#outside;
  }

  push(chunk: Uint8Array): Framed[] {
    const framed: Framed[] = [];
    for (const byte of chunk) {
      if (byte === this.#begin) this.#start(framed);
      else if (!this.#inFrame) this.#skip(framed);
      else if (byte === this.#end) this.#finish(framed);
      else this.#keep(byte, framed);
    }
    return framed;
  }

  #start(framed: Framed[]): void {
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
    if (this.#outside === this.#maxFrame) framed.push(this.#discard('outside-frame'));
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
