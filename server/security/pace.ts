/** How many machines are remembered; one more, and the one not heard of for longest is forgotten. */
const MOST_KNOWN = 256;

interface Level {
  left: number;
  at: number;
}

/** How fast one machine may ask: `perSecond` for ever, `burst` at once. */
export class Pace {
  readonly #perSecond: number;
  readonly #burst: number;
  readonly #known = new Map<string, Level>();

  constructor(perSecond: number, burst: number) {
    this.#perSecond = perSecond;
    this.#burst = burst;
  }

  /** Whether a machine may ask once more, at a time in milliseconds of a clock that only goes forward. */
  allows(who: string, nowMs: number): boolean {
    const before = this.#known.get(who) ?? { left: this.#burst, at: nowMs };
    const left = Math.min(this.#burst, before.left + ((nowMs - before.at) / 1000) * this.#perSecond);
    const allowed = left >= 1;
    // Put in anew, so that the order of the map is that of the last word.
    this.#known.delete(who);
    this.#known.set(who, { left: allowed ? left - 1 : left, at: nowMs });
    const [longest] = this.#known.keys();
    if (this.#known.size > MOST_KNOWN && longest !== undefined) this.#known.delete(longest);
    return allowed;
  }

  /** How many machines are remembered. */
  get size(): number {
    return this.#known.size;
  }
}
