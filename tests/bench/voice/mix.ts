import { EAR_RATE } from '../../../hardware/ear/pcm.ts';
import { between, type Random, seededRandom } from '../../../hardware/simulator/random.ts';
import { makeNoise, type Noise } from './noise.ts';

/** What a sentence is heard in: a noise so many dB below the speech, and whether the walls answer. */
export interface Condition {
  readonly noise: Noise;
  readonly snrDb: number;
  readonly room: boolean;
}

/** How loud speech comes in: root mean square of its speaking parts, of a full scale of 32,768. */
const SPEECH_LEVEL = 2200;

/** A barn of boards and concrete, in an impulse response made here: it dies by 60 dB in this many seconds. */
const ROOM_SECONDS = 0.35;
/** The direct sound over all that the walls send back, in dB: a keeper about an arm's length from the microphone. */
const DIRECT_OVER_ROOM_DB = 8;

/** Silence before and after the words, in samples: what the gate needs, and what its wait for the end takes. */
export interface Around {
  readonly before: number;
  readonly after: number;
}

/** A sentence in its condition. Samples of the words begin at `around.before`. */
export function mixAt(
  speech: Int16Array,
  condition: Condition,
  around: Around,
  seed: number,
): { samples: Int16Array; speechEnds: number } {
  const random = seededRandom(seed);
  const words = speechAtLevel(speech);
  const length = around.before + words.length + around.after;
  let voice = new Float64Array(length);
  voice.set(words, around.before);
  if (condition.room) voice = echoed(voice, random);
  const noise = noiseAtLevel(condition.noise, condition.snrDb, length, random);
  return { samples: pcm(voice.map((x, i) => x + (noise[i] ?? 0))), speechEnds: around.before + words.length };
}

/** Speech as loud as it comes in, without the silence around it. */
export function speechAtLevel(speech: Int16Array): Float64Array {
  const trimmed = trim(speech);
  const gain = SPEECH_LEVEL / activeLevel(trimmed);
  return Float64Array.from(trimmed, (x) => gain * x);
}

/** So many samples of a noise so many dB below speech. */
export function noiseAtLevel(noise: Noise, snrDb: number, length: number, random: Random): Float64Array {
  const made = makeNoise(noise, length, random);
  const scale = SPEECH_LEVEL / 10 ** (snrDb / 20) / rms(made);
  return made.map((x) => scale * x);
}

/** Samples of 16 bits; what is louder is clipped. */
export function pcm(samples: Float64Array): Int16Array {
  return Int16Array.from(samples, (x) => Math.max(-32_768, Math.min(32_767, Math.round(x))));
}

/** Cuts the silence a synthesiser leaves before and after. */
function trim(samples: Int16Array): Int16Array {
  const loud = 0.02 * samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  let [from, to] = [0, samples.length];
  while (from < to && Math.abs(samples[from] ?? 0) < loud) from += 1;
  while (to > from && Math.abs(samples[to - 1] ?? 0) < loud) to -= 1;
  return samples.subarray(from, to);
}

/** Root mean square of the 20 ms pieces within 30 dB of the loudest. */
function activeLevel(samples: Int16Array): number {
  const size = EAR_RATE / 50;
  const powers: number[] = [];
  for (let at = 0; at + size <= samples.length; at += size) {
    powers.push(samples.subarray(at, at + size).reduce((sum, x) => sum + x * x, 0) / size);
  }
  const most = Math.max(...powers);
  const active = powers.filter((power) => power > most / 1000);
  return Math.sqrt(active.reduce((sum, power) => sum + power, 0) / active.length);
}

function rms(samples: Float64Array): number {
  return Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);
}

/** The voice with what the walls send back: 60 reflections ever denser and fainter. */
function echoed(voice: Float64Array, random: Random): Float64Array<ArrayBuffer> {
  const reflections = Array.from({ length: 60 }, () => {
    const seconds = 0.004 + ROOM_SECONDS * random() ** 1.5;
    return {
      delay: Math.round(seconds * EAR_RATE),
      gain: between(random, -1, 1) * 10 ** ((-3 * seconds) / ROOM_SECONDS),
    };
  });
  const power = reflections.reduce((sum, { gain }) => sum + gain * gain, 0);
  const scale = Math.sqrt(10 ** (-DIRECT_OVER_ROOM_DB / 10) / power);
  const out = Float64Array.from(voice);
  for (const { delay, gain } of reflections) {
    const share = gain * scale;
    for (let i = delay; i < out.length; i += 1) out[i] = (out[i] ?? 0) + share * (voice[i - delay] ?? 0);
  }
  return out;
}
