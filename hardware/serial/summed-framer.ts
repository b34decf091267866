import type { DiscardReason, Framed, Framer } from './framed.ts';

const STX = 0x02;
const CR = 0x0d;
/** STX, three status words, twelve digits, CR and the checksum. */
const LENGTH = 18;
const CR_AT = 16;
/** Discarded bytes are told of in lots of no more than this many. */
const LOT = 64;

/**
 * Cuts out frames of 18 bytes that begin with STX, have CR before their last byte, and sum up to 0 in seven bits.
 *
 * The last byte is the two's complement of the sum of the low seven bits of all before it, STX and CR included. It
 * may look like any byte, STX too, so a frame that fails gives up one byte only and the search goes on within it.
 * The text of a frame is the 16 bytes between STX and checksum.
 */
export class SummedFramer implements Framer {
  readonly #held: Buffer = Buffer.alloc(LENGTH);
  #count = 0;
  #outside = 0;

  get pendingBytes(): number {
    return this.#count + this.#outside;
  }

  push(chunk: Uint8Array): Framed[] {
    const framed: Framed[] = [];
    for (const byte of chunk) {
      this.#held[this.#count] = byte;
      this.#count += 1;
      if (this.#held[0] !== STX) this.#giveUp(1, framed);
      else if (this.#count === LENGTH) this.#judge(framed);
    }
    return framed;
  }

  #judge(framed: Framed[]): void {
    const why = this.#whyNoFrame();
    if (why === null) {
      this.#tellOutside(framed);
      framed.push({ kind: 'line', text: this.#held.toString('latin1', 1, LENGTH - 1) });
      this.#count = 0;
      return;
    }
    if (why === 'outside-frame') {
      this.#giveUp(1, framed);
    } else {
      this.#tellOutside(framed);
      framed.push({ kind: 'discarded', bytes: 1, reason: why });
      this.#shift(1);
    }
    const next = this.#held.subarray(0, this.#count).indexOf(STX);
    if (next !== 0) this.#giveUp(next < 0 ? this.#count : next, framed);
  }

  #whyNoFrame(): DiscardReason | null {
    if (this.#held[CR_AT] !== CR) return 'outside-frame';
    let sum = 0;
    let bits = 0;
    for (const byte of this.#held) {
      sum += byte;
      bits |= byte;
    }
    if (bits > 0x7f) return 'not-ascii';
    return sum % 128 === 0 ? null : 'bad-checksum';
  }

  #giveUp(bytes: number, framed: Framed[]): void {
    this.#shift(bytes);
    this.#outside += bytes;
    if (this.#outside >= LOT) this.#tellOutside(framed);
  }

  #tellOutside(framed: Framed[]): void {
    if (this.#outside > 0) framed.push({ kind: 'discarded', bytes: this.#outside, reason: 'outside-frame' });
    this.#outside = 0;
  }

  #shift(bytes: number): void {
    this.#held.copyWithin(0, bytes, this.#count);
    this.#count -= bytes;
  }
}
