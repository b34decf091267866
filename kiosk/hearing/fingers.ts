import { spendClicks } from '../parts/press-guard.ts';

/** How long after the last finger its click has come, in ms. */
const CLICK_MS = 60;

/**
 * Keeps what is asked aloud from pulling the screen away under a finger: it waits until no finger is down. The plate to
 * talk by does not count, and of several things asked meanwhile the last is done.
 */
export class Fingers {
  readonly #down = new Set<number>();
  #waiting: (() => void) | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    addEventListener('pointerdown', this.#onDown, true);
    addEventListener('pointerup', this.#onUp, true);
    addEventListener('pointercancel', this.#onUp, true);
  }

  /** Does it now, or once the fingers have lifted; a tap that was meant for the screen before it does not count. */
  whenLifted(act: () => void): void {
    this.#waiting = act;
    this.#settle(0);
  }

  /** Forgets what waits. */
  end(): void {
    clearTimeout(this.#timer);
    removeEventListener('pointerdown', this.#onDown, true);
    removeEventListener('pointerup', this.#onUp, true);
    removeEventListener('pointercancel', this.#onUp, true);
  }

  readonly #onDown = (event: PointerEvent): void => {
    // A first finger tells that all before it have gone, even where their end was never heard.
    if (event.isPrimary) this.#down.clear();
    const talks = event.target instanceof Element && event.target.closest('[data-talk]') !== null;
    if (!talks) this.#down.add(event.pointerId);
  };

  readonly #onUp = (event: PointerEvent): void => {
    this.#down.delete(event.pointerId);
    this.#settle(CLICK_MS);
  };

  #settle(afterMs: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      if (this.#down.size > 0 || this.#waiting === null) return;
      const act = this.#waiting;
      this.#waiting = null;
      act();
      spendClicks();
    }, afterMs);
  }
}
