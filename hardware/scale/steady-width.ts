/** How many lines in a row must share a length before it is first believed: a connection must soon be of use. */
const FIRST_PROOF = 3;
/** How many before another length is believed: half a second of lines, as after a switch of unit. */
const CHANGE_PROOF = 5;

/**
 * Tells lines of the usual length from odd ones, for formats whose width differs from maker to maker.
 *
 * A byte lost inside a number leaves a line that still reads well (`0012.34` becomes `001.34`), and only its
 * length betrays it. One for each connection.
 */
export class SteadyWidth {
  #believed = 0;
  #candidate = 0;
  #seen = 0;

  /** True where a sound line of this length may be trusted; the first two lines of a connection never are. */
  accepts(length: number): boolean {
    if (length === this.#believed) {
      this.#seen = 0;
      return true;
    }
    this.#seen = length === this.#candidate ? this.#seen + 1 : 1;
    this.#candidate = length;
    if (this.#seen < (this.#believed === 0 ? FIRST_PROOF : CHANGE_PROOF)) return false;
    this.#believed = length;
    this.#seen = 0;
    return true;
  }
}
