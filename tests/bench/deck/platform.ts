import type { Draws } from './draws.ts';
import type { ParameterSet } from './parameters.ts';
import { FINE_HZ, type Signal } from './signal.ts';

/** What a scale said: when, and how much. */
export interface Sample {
  /** Milliseconds from the start of the recording. */
  readonly at: number;
  readonly grams: number;
}

/** A deck rings under a changing load: a spring with little damping. Works in place. */
export function ring(draws: Draws, load: Signal, set: ParameterSet): void {
  const omega = 2 * Math.PI * draws.within(set.resonance.hz);
  const damping = draws.within(set.resonance.damping);
  const dt = 1 / FINE_HZ;
  let place = load[0] ?? 0;
  let speed = 0;
  for (let i = 0; i < load.length; i += 1) {
    speed += dt * (omega * omega * ((load[i] ?? 0) - place) - 2 * damping * omega * speed);
    place += dt * speed;
    load[i] = place;
  }
}

/** The filter inside the scale: first order, or a moving average with the same mean delay. Works in place. */
export function smooth(draws: Draws, load: Signal, set: ParameterSet): void {
  const lag = draws.within(set.lag);
  if (draws.chance(0.5)) {
    const share = 1 - Math.exp(-1 / (FINE_HZ * lag));
    let value = load[0] ?? 0;
    for (let i = 0; i < load.length; i += 1) {
      value += share * ((load[i] ?? 0) - value);
      load[i] = value;
    }
    return;
  }
  const length = Math.max(1, Math.round(2 * lag * FINE_HZ));
  const raw = load.slice();
  let sum = length * (raw[0] ?? 0);
  for (let i = 0; i < load.length; i += 1) {
    sum += (raw[i] ?? 0) - (raw[Math.max(0, i - length)] ?? 0);
    load[i] = sum / length;
  }
}

/** Reads a load as a scale does over a line: unevenly, with readings lost, in whole divisions. */
export function sample(
  draws: Draws,
  load: Signal,
  set: ParameterSet,
  hz: number,
  division: number,
): Sample[] {
  const samples: Sample[] = [];
  const jitter = draws.within(set.jitter);
  const interval = draws.within([0.95, 1.05]) / hz;
  const first = draws.within([0, interval]);
  for (let tick = 0; ; tick += 1) {
    const taken = first + interval * (tick + jitter * draws.within([-0.5, 0.5]));
    const i = Math.round(taken * FINE_HZ);
    if (i >= load.length) return samples;
    if (i < 0 || draws.chance(set.lost)) continue;
    samples.push({ at: 1000 * taken, grams: Math.round((load[i] ?? 0) / division) * division });
  }
}
