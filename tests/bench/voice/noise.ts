import { EAR_RATE } from '../../../hardware/ear/pcm.ts';
import { between, type Random } from '../../../hardware/simulator/random.ts';

/** The noises of the bench, all made here by formula. */
export const NOISES = ['pink', 'fan', 'bleats', 'clatter'] as const;
/** One of {@link NOISES}. */
export type Noise = (typeof NOISES)[number];

/** So many samples of a noise at no level in particular; {@link mixAt} sets it. */
export function makeNoise(noise: Noise, length: number, random: Random): Float64Array {
  switch (noise) {
    case 'pink':
      return pink(length, random);
    case 'fan':
      return fan(length, random);
    case 'bleats':
      return bleats(length, random);
    case 'clatter':
      return clatter(length, random);
  }
}

/** White noise through a row of one-pole filters an octave or two apart: about -3 dB an octave from 20 Hz up. */
function pink(length: number, random: Random): Float64Array {
  const poles = [0.9986, 0.993, 0.969, 0.866, 0.55];
  const gains = [0.09, 0.11, 0.2, 0.4, 0.6];
  const state = poles.map(() => 0);
  return Float64Array.from({ length }, () => {
    let sum = 0;
    poles.forEach((pole, i) => {
      state[i] = pole * (state[i] ?? 0) + (gains[i] ?? 0) * between(random, -1, 1);
      sum += state[i] ?? 0;
    });
    return sum;
  });
}

/** A mains hum with its harmonics, blades that beat on it, and a rush of air. */
function fan(length: number, random: Random): Float64Array {
  const base = between(random, 48, 62);
  const blade = between(random, 5, 8) * (base / 2);
  const air = pink(length, random);
  return Float64Array.from({ length }, (_, i) => {
    const t = i / EAR_RATE;
    let hum = 0;
    for (let n = 1; n <= 8; n += 1) hum += Math.sin(2 * Math.PI * base * n * t + n) / n;
    const beat = Math.sin(2 * Math.PI * blade * t) * (1 + 0.3 * Math.sin(2 * Math.PI * 3 * t));
    return 0.5 * hum + 0.5 * beat + 1.2 * (air[i] ?? 0);
  });
}

/** Calls of a goat: a buzzing source of 200 to 400 Hz that trembles, through two formants, with pauses between. */
function bleats(length: number, random: Random): Float64Array {
  const out = pink(length, random).map((x) => 0.05 * x);
  let at = Math.floor(between(random, 0, 0.4) * EAR_RATE);
  while (at < length) {
    const lasts = Math.floor(between(random, 0.4, 1.1) * EAR_RATE);
    const pitch = between(random, 200, 400);
    const tremble = between(random, 7, 12);
    const first = resonator(between(random, 650, 950), 120);
    const second = resonator(between(random, 1500, 2100), 180);
    let phase = 0;
    for (let i = 0; i < lasts && at + i < length; i += 1) {
      const t = i / EAR_RATE;
      const shake = Math.sin(2 * Math.PI * tremble * t);
      phase += (pitch * (1 + 0.06 * shake)) / EAR_RATE;
      const source = 2 * (phase % 1) - 1 + between(random, -0.2, 0.2);
      const envelope = Math.min(1, t / 0.05, (lasts - i) / EAR_RATE / 0.12) * (0.7 + 0.3 * shake);
      out[at + i] = (out[at + i] ?? 0) + envelope * (first(source) + 0.6 * second(source));
    }
    at += lasts + Math.floor(between(random, 0.2, 0.9) * EAR_RATE);
  }
  return out;
}

/** Buckets and gates: knocks that ring at a few frequencies and die away. */
function clatter(length: number, random: Random): Float64Array {
  const out = pink(length, random).map((x) => 0.03 * x);
  let at = Math.floor(between(random, 0, 0.25) * EAR_RATE);
  while (at < length) {
    const rings = Array.from({ length: 4 }, () => ({
      hertz: between(random, 350, 4500),
      dies: between(random, 8, 40),
      loud: between(random, 0.2, 1),
    }));
    for (let i = 0; i < 0.4 * EAR_RATE && at + i < length; i += 1) {
      const t = i / EAR_RATE;
      let sum = t < 0.004 ? between(random, -1, 1) : 0;
      for (const { hertz, dies, loud } of rings)
        sum += loud * Math.exp(-dies * t) * Math.sin(2 * Math.PI * hertz * t);
      out[at + i] = (out[at + i] ?? 0) + sum;
    }
    at += Math.floor(between(random, 0.12, 0.6) * EAR_RATE);
  }
  return out;
}

/** A two-pole resonance of unit peak, in hertz. */
function resonator(hertz: number, width: number): (x: number) => number {
  const r = Math.exp((-Math.PI * width) / EAR_RATE);
  const a = 2 * r * Math.cos((2 * Math.PI * hertz) / EAR_RATE);
  let [y1, y2] = [0, 0];
  return (x) => {
    const y = (1 - r) * x + a * y1 - r * r * y2;
    [y2, y1] = [y1, y];
    return y;
  };
}
