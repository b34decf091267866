/** Cuts a stream of samples into pieces of one length, 16 bits a sample. */
export class Pieces {
  readonly #length: number;
  readonly #onpiece: (piece: Int16Array<ArrayBuffer>) => void;
  #piece: Int16Array<ArrayBuffer>;
  #filled = 0;

  /** `length` is in samples; `onpiece` is given each full piece, to keep. */
  constructor(length: number, onpiece: (piece: Int16Array<ArrayBuffer>) => void) {
    this.#length = length;
    this.#onpiece = onpiece;
    this.#piece = new Int16Array(length);
  }

  /** Takes samples of -1 to 1 (included); what lies beyond is clipped. */
  push(block: Float32Array): void {
    for (const sample of block) {
      this.#piece[this.#filled] = Math.round(32_767 * Math.max(-1, Math.min(1, sample)));
      this.#filled += 1;
      if (this.#filled < this.#length) continue;
      const full = this.#piece;
      this.#piece = new Int16Array(this.#length);
      this.#filled = 0;
      this.#onpiece(full);
    }
  }
}
