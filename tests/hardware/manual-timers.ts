import type { TimerHandle, Timers } from '../../hardware/serial/timers.ts';

interface Waiting {
  readonly handle: number;
  readonly at: number;
  readonly run: () => void;
}

/** Timers that stand still until a test moves them. */
export class ManualTimers implements Timers {
  #now = 0;
  #next = 1;
  #waiting: Waiting[] = [];

  now(): number {
    return this.#now;
  }

  set(run: () => void, afterMs: number): TimerHandle {
    const handle = this.#next;
    this.#next += 1;
    this.#waiting.push({ handle, at: this.#now + Math.max(0, afterMs), run });
    return handle;
  }

  clear(handle: TimerHandle): void {
    this.#waiting = this.#waiting.filter((one) => one.handle !== handle);
  }

  /** How many are set and have not run: 0 after everything was stopped. */
  get pending(): number {
    return this.#waiting.length;
  }

  /** Moves time on, running what falls due in order; promises settle before each and at the end. */
  async advance(ms: number): Promise<void> {
    const until = this.#now + ms;
    await settlePromises();
    for (let due = this.#firstDue(until); due !== undefined; due = this.#firstDue(until)) {
      this.#now = Math.max(this.#now, due.at);
      this.clear(due.handle);
      due.run();
      await settlePromises();
    }
    this.#now = until;
  }

  #firstDue(until: number): Waiting | undefined {
    return this.#waiting
      .filter((one) => one.at <= until)
      .reduce<Waiting | undefined>(
        (first, one) => (first === undefined || one.at < first.at ? one : first),
        undefined,
      );
  }
}

async function settlePromises(): Promise<void> {
  for (let turn = 0; turn < 20; turn += 1) await Promise.resolve();
}
