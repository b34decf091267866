import type { Sample } from '../platform.ts';

/** The readings of the last so many milliseconds, in the order they came and in the order of their size. */
export class TimeWindow {
  readonly #lengthMs: number;
  readonly #samples: Sample[] = [];
  readonly #sorted: number[] = [];

  constructor(lengthMs: number) {
    this.#lengthMs = lengthMs;
  }

  push(sample: Sample): void {
    this.#samples.push(sample);
    this.#sorted.splice(this.#place(sample.grams), 0, sample.grams);
    // One reading from beyond the far end stays, so that what is inside spans the whole length.
    while ((this.#samples[1]?.at ?? sample.at) <= sample.at - this.#lengthMs) {
      const gone = this.#samples.shift();
      if (gone !== undefined) this.#sorted.splice(this.#place(gone.grams), 1);
    }
  }

  /** Whether the readings reach back as far as the window is long. */
  get full(): boolean {
    const first = this.#samples[0];
    const last = this.#samples.at(-1);
    return first !== undefined && last !== undefined && last.at - first.at >= this.#lengthMs;
  }

  /** The values from the smallest to the largest, without this share at either end. */
  sorted(trim = 0): readonly number[] {
    const cut = Math.floor(trim * this.#sorted.length);
    return cut === 0 ? this.#sorted : this.#sorted.slice(cut, this.#sorted.length - cut);
  }

  #place(grams: number): number {
    let low = 0;
    let high = this.#sorted.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#sorted[middle] ?? 0) < grams) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

/** The mean of values, at least one. */
export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** How far apart the ends of sorted values are. */
export function spread(sorted: readonly number[]): number {
  return (sorted.at(-1) ?? 0) - (sorted[0] ?? 0);
}

/** The middle of sorted values. */
export function middle(sorted: readonly number[]): number {
  const half = (sorted.length - 1) / 2;
  return ((sorted[Math.floor(half)] ?? 0) + (sorted[Math.ceil(half)] ?? 0)) / 2;
}
