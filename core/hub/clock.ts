/**
 * A hybrid logical clock: wall time as far as it can be believed, and a count that orders what falls into one millisecond.
 *
 * After Kulkarni and others, "Logical Physical Clocks" (2014), with a bound of our own on what is believed.
 */
export interface HybridClock {
  /** Milliseconds since 1970, not negative. */
  readonly ms: number;
  /** Events before this one in the same millisecond, 0 to 99,999. */
  readonly count: number;
}

/** How far a clock may be ahead of the wall and still be followed: more is a wrong clock (our own guard). */
export const BELIEVED_AHEAD_MS = 10 * 60_000;

/** The clock of a kiosk that has told nothing yet. */
export const FIRST_CLOCK: HybridClock = { ms: 0, count: 0 };

const MOST_MS = 999_999_999_999_999;
const MOST_COUNT = 99_999;

/**
 * The clock of the next event, after the last one and at a wall time in milliseconds since 1970.
 *
 * It is later than the last, unless the last lies further ahead than is believed: then the wall was wrong and was set
 * right, and the clock begins from the wall anew.
 */
export function tick(last: HybridClock, wallMs: number): HybridClock {
  const wall = bounded(wallMs);
  if (wall > last.ms || last.ms > wall + BELIEVED_AHEAD_MS) return { ms: wall, count: 0 };
  if (last.count < MOST_COUNT) return { ms: last.ms, count: last.count + 1 };
  return { ms: last.ms + 1, count: 0 };
}

/** The clock after hearing of a peer's: followed where it may be right, and left alone where it is too far ahead. */
export function hear(own: HybridClock, peer: HybridClock, wallMs: number): HybridClock {
  if (peer.ms > bounded(wallMs) + BELIEVED_AHEAD_MS) return own;
  return compareClocks(peer, own) > 0 ? peer : own;
}

/** Negative where `a` is before `b`, positive where it is after, 0 where they are equal. */
export function compareClocks(a: HybridClock, b: HybridClock): number {
  return a.ms - b.ms || a.count - b.count;
}

/** A clock as text of a fixed length, so that text in the order of its bytes is in the order of the clocks. */
export function clockText({ ms, count }: HybridClock): string {
  return `${String(ms).padStart(15, '0')}.${String(count).padStart(5, '0')}`;
}

/** Reads what `clockText` wrote; throws where it is not of that form. */
export function readClock(text: string): HybridClock {
  const [, ms, count] = /^(\d{15})\.(\d{5})$/.exec(text) ?? [];
  if (ms === undefined || count === undefined) throw new Error(`${JSON.stringify(text)} is no hybrid clock`);
  return { ms: Number(ms), count: Number(count) };
}

function bounded(wallMs: number): number {
  return Math.min(Math.max(0, Math.round(wallMs)), MOST_MS);
}
