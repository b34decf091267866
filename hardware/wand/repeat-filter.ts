/** How long the same tag is not told again: a wand held at an ear reads it many times. */
const REPEAT_MS = 3000;

/** Lets the first of several equal reads through; one wand, one filter. */
export class RepeatFilter {
  readonly #now: () => number;
  #tag = '';
  #toldAt = Number.NEGATIVE_INFINITY;

  /** `now` is the uptime in milliseconds. */
  constructor(now: () => number) {
    this.#now = now;
  }

  /**
   * True where this read is news: another tag than the last, or the same one 3 s (included) after it was last told.
   *
   * A wand held at one ear is thus told again every 3 s, so that the read stays fresh.
   */
  isNews(tag: string): boolean {
    const now = this.#now();
    if (tag === this.#tag && now - this.#toldAt < REPEAT_MS) return false;
    this.#tag = tag;
    this.#toldAt = now;
    return true;
  }
}
