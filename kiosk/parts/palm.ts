/** A touch wider than this, in mm, is no fingertip: a palm or a sleeve. Our own guard; a gloved fingertip is well below. */
const WIDEST_FINGER_MM = 32;
/** Touches that come down within this of each other come from one hand laid on the glass, in ms. Our own guard. */
const AT_ONCE_MS = 80;

/** Whether a touch is wider or longer than a finger in a glove; a contact whose size is not told is a point. */
export function isWide({ width, height }: Pick<PointerEvent, 'width' | 'height'>, pxPerMm: number): boolean {
  return Math.max(width, height) > WIDEST_FINGER_MM * pxPerMm;
}

/** The touches that are on the glass, wherever they are, and when each came. */
export class Touches {
  readonly #down = new Map<number, number>();

  /** Notes a touch that came down. */
  came(pointerId: number, atMs: number): void {
    this.#down.set(pointerId, atMs);
  }

  /** Notes that one was lifted. */
  went(pointerId: number): void {
    this.#down.delete(pointerId);
  }

  /** Whether another touch that is still there came down together with this one. */
  together(pointerId: number): boolean {
    const at = this.#down.get(pointerId);
    if (at === undefined) return false;
    return [...this.#down].some(([id, other]) => id !== pointerId && Math.abs(other - at) < AT_ONCE_MS);
  }
}
