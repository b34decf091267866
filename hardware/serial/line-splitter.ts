import type { DiscardReason, Framed, Framer } from './framed.ts';

const CR = 0x0d;
const LF = 0x0a;

/** How a line splitter starts. */
export interface LineSplitterOptions {
  /** The longest text of a line, in bytes; a longer one is discarded. */
  readonly maxLength: number;
  /** True where the first line is known to be whole; otherwise it is discarded, since a port may open mid-line. */
  readonly synchronised: boolean;
}

/** Splits a byte stream into lines of printable ASCII that end with CR LF. */
export class LineSplitter implements Framer {
  readonly #pending: Buffer;
  #held = 0;
  /** Bytes of the present line that did not fit and are gone. */
  #dropped = 0;
  #printable = true;
  #synchronised: boolean;

  constructor(options: LineSplitterOptions) {
    // One byte more than a line: the CR, which is text until the LF behind it proves otherwise.
    this.#pending = Buffer.alloc(options.maxLength + 1);
    this.#synchronised = options.synchronised;
  }

  get pendingBytes(): number {
    return this.#held + this.#dropped;
  }

  push(chunk: Uint8Array): Framed[] {
    const framed: Framed[] = [];
    for (const byte of chunk) {
      if (byte === LF && this.#held > 0 && this.#pending[this.#held - 1] === CR) {
        framed.push(this.#finish());
      } else {
        this.#keep(byte);
      }
    }
    return framed;
  }

  #keep(byte: number): void {
    // A CR that no LF followed was part of the text, and text holds no CR.
    if (this.#held > 0 && this.#pending[this.#held - 1] === CR) this.#printable = false;
    if (byte !== CR && (byte < 0x20 || byte > 0x7e)) this.#printable = false;
    if (this.#held === this.#pending.length) {
      this.#dropped += this.#held;
      this.#held = 0;
    }
    this.#pending[this.#held] = byte;
    this.#held += 1;
  }

  #finish(): Framed {
    const bytes = this.pendingBytes + 1;
    const reason = this.#whyDiscarded();
    const text = reason === null ? this.#pending.toString('latin1', 0, this.#held - 1) : '';
    this.#held = 0;
    this.#dropped = 0;
    this.#printable = true;
    this.#synchronised = true;
    return reason === null ? { kind: 'line', text } : { kind: 'discarded', bytes, reason };
  }

  #whyDiscarded(): DiscardReason | null {
    if (!this.#synchronised) return 'unsynchronised';
    if (this.#dropped > 0) return 'too-long';
    return this.#printable ? null : 'not-ascii';
  }
}
