/** A finished sound: a whole WAV file and how long it lasts. */
export interface Wav {
  readonly bytes: Uint8Array;
  readonly durationMs: number;
}

/** Bytes of a header with the format and nothing else before the samples. */
const HEADER = 44;

/**
 * The sound in a WAV stream of 16-bit mono samples, with its lengths put right: a program that writes to a pipe cannot
 * go back and fill them in. `null` where the bytes are no such stream, or hold no sample.
 */
export function finishWav(stream: Uint8Array): Wav | null {
  const view = new DataView(stream.buffer, stream.byteOffset, stream.byteLength);
  const name = (at: number) => String.fromCharCode(...stream.subarray(at, at + 4));
  if (stream.length <= HEADER || name(0) !== 'RIFF' || name(8) !== 'WAVE' || name(36) !== 'data') return null;
  if (view.getUint16(22, true) !== 1 || view.getUint16(34, true) !== 16) return null;
  return wavOf(
    stream.subarray(HEADER, HEADER + 2 * Math.floor((stream.length - HEADER) / 2)),
    view.getUint32(24, true),
  );
}

/** A WAV of samples between -1 and 1, at so many a second; louder ones are clipped. */
export function wavOfSamples(samples: Float32Array, rate: number): Wav {
  const pcm = new DataView(new ArrayBuffer(2 * samples.length));
  samples.forEach((sample, i) => {
    pcm.setInt16(2 * i, Math.round(32_767 * Math.max(-1, Math.min(1, sample))), true);
  });
  return wavOf(new Uint8Array(pcm.buffer), rate);
}

/** `wav` at a share of its loudness from 0 to 1, for a player that has no volume of its own. */
export function quieter(wav: Wav, share: number): Wav {
  const bytes = Uint8Array.from(wav.bytes);
  const view = new DataView(bytes.buffer);
  for (let at = HEADER; at + 1 < bytes.length; at += 2) {
    view.setInt16(at, Math.round(share * view.getInt16(at, true)), true);
  }
  return { ...wav, bytes };
}

/** A WAV of 16-bit mono samples as they lie in memory, at so many a second. */
export function wavOf(pcm: Uint8Array, rate: number): Wav {
  const bytes = new Uint8Array(HEADER + pcm.length);
  const view = new DataView(bytes.buffer);
  const write = (at: number, text: string) => bytes.set(new TextEncoder().encode(text), at);
  write(0, 'RIFF');
  view.setUint32(4, HEADER - 8 + pcm.length, true);
  write(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, 2 * rate, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  write(36, 'data');
  view.setUint32(40, pcm.length, true);
  bytes.set(pcm, HEADER);
  return { bytes, durationMs: (1000 * pcm.length) / (2 * rate) };
}
