import { samplesOf } from '../../hardware/ear/framing.ts';
import { MOST_SOUND_BYTES } from '../../shared/ear.ts';

/** The samples in a binary frame of a page; `null` where it is empty, torn in the middle of a sample, or too long. */
export function samplesIn(frame: Uint8Array): Int16Array | null {
  if (frame.length === 0 || frame.length % 2 !== 0 || frame.length > MOST_SOUND_BYTES) return null;
  return samplesOf(frame);
}

/** Sound that came over the wire late may come at once, but no more of it than this, in ms. */
const BURST_MS = 4000;
/** A page's clock may run this much faster than the kiosk's. */
const FASTER = 1.1;

/** What of a stream of sound is taken: as much as time has passed, since no microphone hears faster than that. */
export interface Allowance {
  /** Whether a piece of so many ms is taken at this uptime in milliseconds. */
  take(ms: number, nowMs: number): boolean;
}

/** An allowance that begins full. */
export function createAllowance(): Allowance {
  let left = BURST_MS;
  let at: number | null = null;
  return {
    take(ms, nowMs) {
      left = Math.min(BURST_MS, left + FASTER * Math.max(0, nowMs - (at ?? nowMs)));
      at = nowMs;
      if (ms > left) return false;
      left -= ms;
      return true;
    },
  };
}
