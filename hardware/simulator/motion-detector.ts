/** Over how long a scale compares, in milliseconds; one manual of an instrument says a second (facts §3). */
const WINDOW_MS = 1000;

/** Flags motion as an indicator does: the load varied by more than one division within the last second. */
export class MotionDetector {
  readonly #division: number;
  #recent: { readonly at: number; readonly grams: number }[] = [];

  /** The division in grams. */
  constructor(division: number) {
    this.#division = division;
  }

  /** Takes one sample, uptime in milliseconds, and says whether the load moves. */
  moves(at: number, grams: number): boolean {
    this.#recent = this.#recent.filter((sample) => at - sample.at < WINDOW_MS);
    this.#recent.push({ at, grams });
    const loads = this.#recent.map((sample) => sample.grams);
    return Math.max(...loads) - Math.min(...loads) > this.#division;
  }
}
