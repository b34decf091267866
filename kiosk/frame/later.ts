/** A part of the page that is fetched once, when it is first needed. */
export class Later<Part> {
  readonly #fetch: () => Promise<Part>;
  #part: Part | null = null;

  constructor(fetch: () => Promise<Part>) {
    this.#fetch = fetch;
  }

  /** The part, or `null` until it was fetched. */
  get part(): Part | null {
    return this.#part;
  }

  /** The part, fetched if it is not there yet; rejects where it cannot be had. */
  async get(): Promise<Part> {
    this.#part ??= await this.#fetch();
    return this.#part;
  }
}
