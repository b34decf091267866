import { createResampler } from '../../../hardware/ear/pcm.ts';

/** What a WAV file holds: 16-bit samples, channels side by side. */
export interface Wave {
  readonly rate: number;
  readonly channels: number;
  readonly samples: Int16Array;
}

/** Reads a 16-bit PCM WAV file; throws on any other. */
export function readWave(file: Buffer): Wave {
  if (file.toString('latin1', 0, 4) !== 'RIFF') throw new Error('not a WAV file');
  let at = 12;
  let format = { rate: 0, channels: 0, bits: 0 };
  while (at + 8 <= file.length) {
    const kind = file.toString('latin1', at, at + 4);
    const size = file.readUInt32LE(at + 4);
    const body = at + 8;
    if (kind === 'fmt ') {
      format = {
        channels: file.readUInt16LE(body + 2),
        rate: file.readUInt32LE(body + 4),
        bits: file.readUInt16LE(body + 14),
      };
    } else if (kind === 'data') {
      if (format.bits !== 16) throw new Error(`${format.bits} bits a sample, not 16`);
      const bytes = file.subarray(body, Math.min(file.length, body + size));
      const samples = new Int16Array(Math.floor(bytes.length / 2));
      for (let i = 0; i < samples.length; i += 1) samples[i] = bytes.readInt16LE(2 * i);
      return { rate: format.rate, channels: format.channels, samples };
    }
    at = body + size + (size % 2);
  }
  throw new Error('a WAV file without samples');
}

/** The same sound at 16 kHz, one channel. */
export function monoSamples({ rate, channels, samples }: Wave): Int16Array {
  const resampler = createResampler({ rate, channels });
  const parts = [resampler.push(samples), resampler.end()];
  const all = new Int16Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
