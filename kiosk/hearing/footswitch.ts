import type { Talk } from './talk.ts';

/** Names of keys that can be kept; the rest have none, or one that another keyboard would not send. */
const NAMED = /^[A-Za-z0-9]{1,32}$/;

/**
 * The footswitch: a keyboard of one key, of whatever name. While one is learnt each key pressed is told instead, until
 * one has a name.
 *
 * Its key does nothing else on the page: it would press the button that was last touched.
 */
export class Footswitch {
  readonly #talk: Talk;
  #code: string | null = null;
  #learnt: ((code: string | null) => void) | null = null;

  constructor(talk: Talk) {
    this.#talk = talk;
    addEventListener('keydown', this.#down, true);
    addEventListener('keyup', this.#up, true);
    addEventListener('blur', this.#gone);
    document.addEventListener('visibilitychange', this.#gone);
  }

  /** The `KeyboardEvent.code` it listens to; `null` for none. */
  use(code: string | null): void {
    if (code === this.#code) return;
    if (this.#code !== null) this.#talk.release(this.#code);
    this.#code = code;
  }

  /** Tells the keys pressed, `null` for each without a name; without anybody to tell, the learning is given up. */
  learn(onlearnt: ((code: string | null) => void) | null): void {
    this.#learnt = onlearnt;
  }

  /** Listens no more. */
  end(): void {
    removeEventListener('keydown', this.#down, true);
    removeEventListener('keyup', this.#up, true);
    removeEventListener('blur', this.#gone);
    document.removeEventListener('visibilitychange', this.#gone);
    this.#talk.releaseAll();
  }

  readonly #down = (event: KeyboardEvent): void => {
    if (this.#learnt !== null) {
      keep(event);
      const learnt = this.#learnt;
      const named = NAMED.test(event.code);
      if (named) this.#learnt = null;
      learnt(named ? event.code : null);
    } else if (event.code === this.#code) {
      keep(event);
      if (!event.repeat) this.#talk.press(event.code);
    }
  };

  readonly #up = (event: KeyboardEvent): void => {
    if (event.code !== this.#code) return;
    keep(event);
    this.#talk.release(event.code);
  };

  readonly #gone = (): void => this.#talk.releaseAll();
}

function keep(event: Event): void {
  event.preventDefault();
  event.stopImmediatePropagation();
}
