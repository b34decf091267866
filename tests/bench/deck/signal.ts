/** How finely a load is drawn before a scale samples it, in values a second: far above any resonance of a deck. */
export const FINE_HZ = 250;

/** A load over time in steps of 1 / `FINE_HZ` seconds, from the moment the recording begins. */
export type Signal = Float64Array;

/** An empty signal of a length in seconds. */
export function createSignal(seconds: number): Signal {
  return new Float64Array(Math.ceil(seconds * FINE_HZ));
}

/** Adds half a sine wave of this height to a signal: begins and ends at zero, outside the signal it is lost. */
export function addBump(signal: Signal, fromSeconds: number, lastsSeconds: number, height: number): void {
  const first = Math.max(0, Math.ceil(fromSeconds * FINE_HZ));
  const last = Math.min(signal.length - 1, Math.floor((fromSeconds + lastsSeconds) * FINE_HZ));
  for (let i = first; i <= last; i += 1) {
    const into = (i / FINE_HZ - fromSeconds) / lastsSeconds;
    signal[i] = (signal[i] ?? 0) + height * Math.sin(Math.PI * into);
  }
}

/** 0 before a rise, 1 behind it, and no corner between. */
export function risen(atSeconds: number, fromSeconds: number, lastsSeconds: number): number {
  const into = Math.min(1, Math.max(0, (atSeconds - fromSeconds) / lastsSeconds));
  return into * into * (3 - 2 * into);
}
