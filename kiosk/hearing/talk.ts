/**
 * Whether the keeper holds something down to talk: the plate on the screen, a footswitch, or both.
 *
 * Talk lasts until the last of them is let go. What is held is let go by itself where its end might never be heard:
 * when the page loses the keyboard or goes out of sight.
 */
export class Talk {
  readonly #held = new Set<string>();
  readonly #ontalk: (on: boolean) => void;

  constructor(ontalk: (on: boolean) => void) {
    this.#ontalk = ontalk;
  }

  /** Whether anything is held. */
  get on(): boolean {
    return this.#held.size > 0;
  }

  /** Something is held down; a key that repeats is held once. */
  press(by: string): void {
    if (this.#held.has(by)) return;
    this.#held.add(by);
    if (this.#held.size === 1) this.#ontalk(true);
  }

  /** It was let go. */
  release(by: string): void {
    if (this.#held.delete(by) && !this.on) this.#ontalk(false);
  }

  /** All of it counts as let go. */
  releaseAll(): void {
    const was = this.on;
    this.#held.clear();
    if (was) this.#ontalk(false);
  }
}
