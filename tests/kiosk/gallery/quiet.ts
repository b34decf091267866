/** For so long nothing may have changed, in ms: several frames. */
const STILL_MS = 60;
/** How long a screen may take to come, in ms. */
const PATIENCE_MS = 30_000;

/** Knows whether the page still fetches or changes anything. */
export class Quiet {
  #asked = 0;
  #changedAt = performance.now();

  constructor() {
    const plain = window.fetch;
    window.fetch = async (...args) => {
      this.#asked += 1;
      try {
        return await plain(...args);
      } finally {
        this.#asked -= 1;
      }
    };
    new MutationObserver(() => {
      this.#changedAt = performance.now();
    }).observe(document.documentElement, {
      subtree: true,
      childList: true,
      characterData: true,
      attributes: true,
    });
  }

  /** Waits until the page is still and what is wanted has come; rejects where it does not come. */
  async come(wanted: () => boolean = () => true): Promise<void> {
    const from = performance.now();
    this.#changedAt = Math.max(this.#changedAt, from - STILL_MS / 2);
    while (!(this.#still() && wanted())) {
      if (performance.now() - from > PATIENCE_MS) throw new Error('the screen does not come to rest');
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
    await new Promise((resolve) => requestAnimationFrame(resolve));
  }

  #still(): boolean {
    return (
      this.#asked === 0 &&
      performance.now() - this.#changedAt >= STILL_MS &&
      document.querySelector('[data-testid$="-loading"]') === null &&
      [...document.images].every(({ complete }) => complete)
    );
  }
}
