import { setAsNewest } from '../set-as-newest.ts';

/** How many machines are remembered where nothing else is said. */
const MOST_KNOWN = 256;

interface Level {
  left: number;
  at: number;
}

/**
 * How fast one machine may ask: `perSecond` for ever, `burst` at once. Of `mostKnown` machines this is remembered; one more,
 * and the one not heard of for longest is forgotten.
 */
export class Pace {
  readonly #perSecond: number;
  readonly #burst: number;
  readonly #mostKnown: number;
  readonly #known = new Map<string, Level>();

  constructor(perSecond: number, burst: number, mostKnown = MOST_KNOWN) {
    this.#perSecond = perSecond;
    this.#burst = burst;
    this.#mostKnown = mostKnown;
  }

  /** Whether a machine may ask once more, at a time in milliseconds of a clock that only goes forward. */
  allows(who: string, nowMs: number): boolean {
    const left = this.#left(who, nowMs);
    const allowed = left >= 1;
    setAsNewest(this.#known, who, { left: allowed ? left - 1 : left, at: nowMs });
    const [longest] = this.#known.keys();
    if (this.#known.size > this.#mostKnown && longest !== undefined) this.#known.delete(longest);
    return allowed;
  }

  /** Whether a machine could ask once more, without counting that it does. */
  wouldAllow(who: string, nowMs: number): boolean {
    return this.#left(who, nowMs) >= 1;
  }

  #left(who: string, nowMs: number): number {
    const { left, at } = this.#known.get(who) ?? { left: this.#burst, at: nowMs };
    return Math.min(this.#burst, left + ((nowMs - at) / 1000) * this.#perSecond);
  }

  /** How many machines are remembered. */
  get size(): number {
    return this.#known.size;
  }
}
