import type { Wav } from './wav.ts';

/** Sounds kept in memory up to a number of bytes; what was not used for longest goes first. */
export class WavCache {
  readonly #kept = new Map<string, Wav>();
  readonly #limit: number;
  #bytes = 0;

  constructor(limitBytes: number) {
    this.#limit = limitBytes;
  }

  /** Bytes kept now. */
  get bytes(): number {
    return this.#bytes;
  }

  /** A sound kept under a key; asked for, it counts as used. */
  get(key: string): Wav | undefined {
    const wav = this.#kept.get(key);
    if (wav !== undefined) {
      this.#kept.delete(key);
      this.#kept.set(key, wav);
    }
    return wav;
  }

  /** Keeps a sound; one larger than the whole limit is not kept. */
  set(key: string, wav: Wav): void {
    this.#drop(key);
    if (wav.bytes.length > this.#limit) return;
    this.#kept.set(key, wav);
    this.#bytes += wav.bytes.length;
    for (const oldest of this.#kept.keys()) {
      if (this.#bytes <= this.#limit) break;
      this.#drop(oldest);
    }
  }

  #drop(key: string): void {
    const wav = this.#kept.get(key);
    if (wav === undefined) return;
    this.#kept.delete(key);
    this.#bytes -= wav.bytes.length;
  }
}
