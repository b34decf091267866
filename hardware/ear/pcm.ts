/** Samples a second the ear works at, one channel, 16 bits. */
export const EAR_RATE = 16_000;

/** How a microphone delivers: samples a second (8,000 to 192,000) and channels side by side (1 to 8). */
export interface PcmFormat {
  readonly rate: number;
  readonly channels: number;
}

/** Turns a stream of one format into 16 kHz mono, piece by piece. */
export interface Resampler {
  /** Samples of the stream, in pieces of any length. */
  push(samples: Int16Array): Int16Array;
  /** What is still inside at the end of the stream. */
  end(): Int16Array;
}

/** Zero crossings of the windowed sinc on each side: 60 dB of what would fold back is gone. */
const CROSSINGS = 16;
/** Steps between two samples the kernel is tabled at. */
const PHASES = 128;

/** Whether a format can be heard. */
export function isHearable({ rate, channels }: PcmFormat): boolean {
  return (
    Number.isInteger(rate) &&
    rate >= 8000 &&
    rate <= 192_000 &&
    Number.isInteger(channels) &&
    channels >= 1 &&
    channels <= 8
  );
}

/**
 * A resampler to 16 kHz mono; channels are averaged. Throws a `RangeError` for a format out of bounds.
 *
 * A windowed sinc with its edge at the lower of the two Nyquist frequencies, so that nothing folds back into speech.
 */
export function createResampler(format: PcmFormat): Resampler {
  if (!isHearable(format))
    throw new RangeError(`cannot hear ${format.rate} Hz in ${format.channels} channels`);
  const { rate, channels } = format;
  const step = rate / EAR_RATE;
  const plain = rate === EAR_RATE;
  const stretch = Math.max(1, step);
  const reach = Math.ceil(CROSSINGS * stretch);
  const kernel = plain ? new Float64Array(0) : kernelTable(reach, stretch);
  let odd: number[] = [];
  /** Mono samples not yet used up; begins with silence so that the first has a past. */
  let line = new Float64Array(plain ? 0 : reach);
  /** Where in the line the next sample is taken, in parts of 1/16,000: whole numbers, so that no drift adds up. */
  let position = reach * EAR_RATE;

  function push(samples: Int16Array): Int16Array {
    const mono = toMono(samples);
    if (plain) return Int16Array.from(mono, clip);
    const joined = new Float64Array(line.length + mono.length);
    joined.set(line);
    joined.set(mono, line.length);
    line = joined;
    return drain();
  }

  function toMono(samples: Int16Array): Float64Array {
    const all = odd.length > 0 ? Int16Array.from([...odd, ...samples]) : samples;
    const frames = Math.floor(all.length / channels);
    odd = [...all.subarray(frames * channels)];
    const mono = new Float64Array(frames);
    for (let i = 0; i < frames; i += 1) {
      let sum = 0;
      for (let c = 0; c < channels; c += 1) sum += all[i * channels + c] ?? 0;
      mono[i] = sum / channels;
    }
    return mono;
  }

  function drain(): Int16Array {
    const limit = (line.length - reach) * EAR_RATE;
    const count = Math.max(0, Math.ceil((limit - position) / rate));
    const out = new Int16Array(count);
    for (let i = 0; i < count; i += 1) out[i] = clip(at((position + i * rate) / EAR_RATE));
    position += count * rate;
    const used = Math.max(0, Math.floor(position / EAR_RATE) - reach);
    line = line.slice(used);
    position -= used * EAR_RATE;
    return out;
  }

  function at(where: number): number {
    const whole = Math.floor(where);
    const phase = Math.round((where - whole) * PHASES);
    let sum = 0;
    for (let k = -reach + 1; k <= reach; k += 1) {
      sum += (line[whole + k] ?? 0) * (kernel[Math.abs(k * PHASES - phase)] ?? 0);
    }
    return sum;
  }

  return {
    push,
    end: () => (plain ? new Int16Array(0) : push(new Int16Array(reach * channels))),
  };
}

function kernelTable(reach: number, stretch: number): Float64Array {
  const table = new Float64Array(reach * PHASES + PHASES + 1);
  for (let i = 0; i < table.length; i += 1) {
    const t = i / PHASES;
    const x = (Math.PI * t) / stretch;
    const sinc = i === 0 ? 1 : Math.sin(x) / x;
    const window = t >= reach ? 0 : 0.5 + 0.5 * Math.cos((Math.PI * t) / reach);
    table[i] = (sinc * window) / stretch;
  }
  return table;
}

function clip(value: number): number {
  return Math.max(-32_768, Math.min(32_767, Math.round(value)));
}
