import { EAR_RATE } from './pcm.ts';

/** What the gate makes of the samples it was given, in order. */
export type GateEvent =
  | { readonly kind: 'opened'; readonly samples: Int16Array }
  | { readonly kind: 'samples'; readonly samples: Int16Array; readonly quietMs: number }
  | { readonly kind: 'closed' };

/** Lets through what may be speech. */
export interface Gate {
  /** 16 kHz mono, in pieces of any length. `mayOpen` is whether speech that begins now is let through. */
  push(samples: Int16Array, mayOpen?: boolean): GateEvent[];
  /** Shuts it and forgets what came before; what was learnt of the noise stays. */
  shut(): void;
}

const FRAME = EAR_RATE / 100;
/** How much of what came before is let through when it opens: a word's first sound is softer than its middle. */
const BEFORE_FRAMES = 30;
/** So many of the last ten frames must be loud to open it. */
const LOUD_OF_TEN = 5;
/** Above the noise by so many dB is loud; by less than so many is quiet, or by less than so much of what speech is. */
const LOUD_DB = 7;
const QUIET_DB = 4;
const QUIET_SHARE = 0.5;
/** How fast speech is believed to be louder or softer than it seemed, in dB a frame: a knock is over before it counts. */
const SWELL = 1.5;
const FADE = 0.05;
/** Quiet for so long closes it, in ms; the ear ends most utterances earlier. */
export const CLOSES_AFTER_MS = 700;
/** No phrase is as long, in ms: a bleat or an engine may hold the gate open. */
export const LONGEST_MS = 6000;
/** How fast the noise is believed to have grown or fallen, in dB a frame. */
const RISE = 0.02;
const FALL = 0.5;
/** Digital silence is not minus infinity. */
const FLOOR_DB = 10;

/**
 * A gate on loudness over the noise, in frames of 10 ms.
 *
 * Loudness is that of the difference between samples, which leaves hum and rumble out. The noise is followed quickly
 * down and slowly up; what is still loud after {@link LONGEST_MS} is taken for noise.
 */
export function createGate(): Gate {
  let rest = new Int16Array(0);
  let before: Int16Array[] = [];
  let last = 0;
  let noise: number | null = null;
  let recent: boolean[] = [];
  let open: { frames: number; quiet: number; speech: number } | null = null;

  function loudness(frame: Int16Array): number {
    let sum = 0;
    for (const sample of frame) {
      const rise = sample - 0.95 * last;
      sum += rise * rise;
      last = sample;
    }
    return Math.max(FLOOR_DB, 10 * Math.log10(sum / frame.length + 1e-9));
  }

  function take(frame: Int16Array, mayOpen: boolean, events: GateEvent[]): void {
    const level = loudness(frame);
    noise = noise === null ? level : noise + Math.max(-FALL, Math.min(RISE, level - noise));
    recent = [...recent.slice(-9), level > noise + LOUD_DB];
    if (open === null) {
      maybeOpen(frame, noise, mayOpen, events);
      return;
    }
    open.frames += 1;
    open.speech += Math.max(-FADE, Math.min(SWELL, level - open.speech));
    const quietBelow = noise + Math.max(QUIET_DB, QUIET_SHARE * (open.speech - noise));
    open.quiet = level < quietBelow ? open.quiet + 1 : 0;
    events.push({ kind: 'samples', samples: frame, quietMs: 10 * open.quiet });
    const endless = 10 * open.frames >= LONGEST_MS;
    if (!endless && 10 * open.quiet < CLOSES_AFTER_MS) return;
    if (endless) noise = Math.max(noise, level);
    events.push({ kind: 'closed' });
    close();
  }

  function maybeOpen(frame: Int16Array, noise: number, mayOpen: boolean, events: GateEvent[]): void {
    before = [...before.slice(1 - BEFORE_FRAMES), frame];
    if (!mayOpen || recent.filter(Boolean).length < LOUD_OF_TEN) return;
    events.push({ kind: 'opened', samples: joined(before) });
    open = { frames: before.length, quiet: 0, speech: noise + LOUD_DB };
    before = [];
  }

  function close(): void {
    open = null;
    recent = [];
    before = [];
  }

  return {
    push(samples, mayOpen = true) {
      const all = joined([rest, samples]);
      const whole = all.length - (all.length % FRAME);
      rest = all.slice(whole);
      const events: GateEvent[] = [];
      for (let at = 0; at < whole; at += FRAME) take(all.slice(at, at + FRAME), mayOpen, events);
      return events;
    },
    shut: close,
  };
}

/** Pieces of sound as one. */
export function joined(pieces: readonly Int16Array[]): Int16Array {
  const all = new Int16Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
