import { AWAKE_MS } from '../../core/speech/wake.ts';
import type { EarSettings } from '../../shared/ear.ts';

/** Whether what is said is meant for the kiosk: while the key to talk is held, and for a while after it was woken. */
export class Attention {
  #talking = false;
  #awakeUntil = 0;
  /** What was left of being awake when the kiosk began to speak: while it does, nobody can be heard. */
  #paused: number | null = null;

  /** Takes where the key to talk stands. */
  hold(talking: boolean): void {
    this.#talking = talking;
  }

  /** A command was heard, or the wake phrase: the time to take the next begins anew. Uptime in milliseconds. */
  heard(nowMs: number): void {
    if (this.#paused === null) this.#awakeUntil = nowMs + AWAKE_MS;
    else this.#paused = AWAKE_MS;
  }

  /** Takes whether the kiosk itself speaks. */
  speaking(speaking: boolean, nowMs: number): void {
    if (speaking) this.#paused ??= Math.max(0, this.#awakeUntil - nowMs);
    else if (this.#paused !== null) {
      this.#awakeUntil = nowMs + this.#paused;
      this.#paused = null;
    }
  }

  /** Falls asleep at once. */
  sleep(): void {
    this.#awakeUntil = 0;
    if (this.#paused !== null) this.#paused = 0;
  }

  /** Whether a command is taken now, with no wake phrase before it. */
  takes(mode: EarSettings['mode'], nowMs: number): boolean {
    const awake = this.#paused === null ? nowMs < this.#awakeUntil : this.#paused > 0;
    return mode !== 'off' && (this.#talking || (mode === 'wake' && awake));
  }

  /** Whether speech that begins now is listened to at all. */
  listens(mode: EarSettings['mode']): boolean {
    return mode === 'wake' || (mode === 'press' && this.#talking);
  }
}
