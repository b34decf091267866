import { EspeakProcess } from './espeak-process.ts';
import { type Mouth, MouthError, type Voicing } from './mouth.ts';
import type { Wav } from './wav.ts';
import { WavCache } from './wav-cache.ts';

/** How many processes wait: a dose and its weight follow each other at once. */
const WAITING = 2;
/** About a minute and a half of speech. */
const CACHE_BYTES = 4 * 1024 * 1024;
/** How often a line is tried anew where the engine died over it. */
const TRIES = 3;
/** Starting a process holds the kiosk up for tens of milliseconds: the sound that was just made goes out first … */
const FILL_AFTER_MS = 100;
/** … and at a start the first weight is shown first. */
const WARM_AFTER_MS = 1000;
/** A process that died while it waited is replaced after this long, so that a broken engine costs nothing. */
const REPLACE_AFTER_MS = 1000;

/** What the mouth is made of. */
export interface EspeakOptions {
  /** The program, by name or path. */
  readonly program: string;
  readonly cacheBytes?: number;
}

/** Speaks with espeak-ng, through processes that wait with their voice loaded. */
export class EspeakMouth implements Mouth {
  readonly #program: string;
  readonly #cache: WavCache;
  #waiting: EspeakProcess[] = [];
  #voicing: Voicing | null = null;
  #stopped = false;

  constructor({ program, cacheBytes = CACHE_BYTES }: EspeakOptions) {
    this.#program = program;
    this.#cache = new WavCache(cacheBytes);
  }

  async render(text: string, voicing: Voicing): Promise<Wav> {
    const key = JSON.stringify([text, voicing.voice, voicing.rate]);
    const known = this.#cache.get(key);
    if (known !== undefined) return known;
    this.#keepTo(voicing);
    for (let tried = 0; tried < TRIES && !this.#stopped; tried += 1) {
      const process = this.#waiting.shift() ?? new EspeakProcess(this.#program, voicing);
      const wav = await process.render(text);
      if (wav !== null) {
        this.#fillSoon(FILL_AFTER_MS);
        this.#cache.set(key, wav);
        return wav;
      }
      if (process.missing) throw new MouthError(`${this.#program} cannot be started`);
    }
    throw new MouthError(`${this.#program} gave no sound`);
  }

  warm(voicing: Voicing): void {
    this.#keepTo(voicing);
    this.#fillSoon(WARM_AFTER_MS);
  }

  stop(): void {
    this.#stopped = true;
    for (const process of this.#waiting.splice(0)) process.kill();
  }

  /** Those that wait with another voice or rate are of no use any more. */
  #keepTo(voicing: Voicing): void {
    if (voicing.voice === this.#voicing?.voice && voicing.rate === this.#voicing.rate) return;
    this.#voicing = voicing;
    for (const process of this.#waiting.splice(0)) process.kill();
  }

  #fillSoon(afterMs: number): void {
    setTimeout(() => this.#fill(), afterMs).unref();
  }

  #fill(): void {
    while (this.#voicing !== null && !this.#stopped && this.#waiting.length < WAITING) {
      const process = new EspeakProcess(this.#program, this.#voicing);
      this.#waiting.push(process);
      void process.ended.then(() => this.#replace(process));
    }
  }

  #replace(process: EspeakProcess): void {
    if (!this.#waiting.includes(process)) return;
    this.#waiting = this.#waiting.filter((each) => each !== process);
    if (!process.missing) this.#fillSoon(REPLACE_AFTER_MS);
  }
}
