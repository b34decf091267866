/** Wrong tries that cost nothing but another try; then each wait is twice the one before. */
const FREE = 3;
const FIRST_WAIT_MS = 10_000;
const LONGEST_WAIT_MS = 15 * 60_000;
/** How many names are remembered. */
const MOST_KNOWN = 256;

/** Makes whoever tries wrongly wait longer and longer. Times are running time in milliseconds. */
export class BackOff {
  readonly #known = new Map<string, { wrong: number; until: number }>();

  /** How long each of these names must wait before the next try, the longest of them; 0 lets them try. */
  waitMs(names: readonly string[], now: number): number {
    return Math.max(0, ...names.map((name) => (this.#known.get(name)?.until ?? 0) - now));
  }

  /** Counts a try as wrong, before it is known: many at once are no way round the wait. */
  tried(names: readonly string[], now: number): void {
    for (const name of names) {
      const wrong = (this.#known.get(name)?.wrong ?? 0) + 1;
      const wait = wrong < FREE ? 0 : Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** (wrong - FREE));
      this.#known.delete(name);
      this.#known.set(name, { wrong, until: now + wait });
      const [oldest] = this.#known.keys();
      if (this.#known.size > MOST_KNOWN && oldest !== undefined) this.#known.delete(oldest);
    }
  }

  /** Forgets what was wrong: the last try was right. */
  right(names: readonly string[]): void {
    for (const name of names) this.#known.delete(name);
  }
}
