/** Tells those who wait for a farm's news that there are some. */
export class News {
  readonly #waiting = new Map<string, Set<() => void>>();
  #over = false;

  /** Waits until there is news of a farm, or for so many milliseconds. */
  wait(farm: string, ms: number): Promise<void> {
    if (this.#over) return Promise.resolve();
    return new Promise((resolve) => {
      const waiting = this.#waiting.get(farm) ?? new Set();
      const done = () => {
        clearTimeout(timer);
        waiting.delete(done);
        if (waiting.size === 0) this.#waiting.delete(farm);
        resolve();
      };
      const timer = setTimeout(done, ms);
      this.#waiting.set(farm, waiting.add(done));
    });
  }

  /** There is news of a farm. */
  tell(farm: string): void {
    for (const done of [...(this.#waiting.get(farm) ?? [])]) done();
  }

  /** Lets all go: the hub ends. */
  end(): void {
    this.#over = true;
    for (const farm of [...this.#waiting.keys()]) this.tell(farm);
  }
}
