import { Pieces } from './pieces.ts';

// What a worklet's own scope offers, of which the library of the page's types knows nothing.
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** Samples in a piece: 32 ms at 16 kHz, so that little is told often enough to answer at once. */
const PIECE = 512;

/** Runs on the audio thread: hands on what the microphone hears, piece by piece. */
class Capture extends AudioWorkletProcessor {
  readonly #pieces = new Pieces(PIECE, ({ buffer }) => this.port.postMessage(buffer, [buffer]));

  /** Called by the browser with each block; `true` keeps it alive while the microphone pauses. */
  process([input]: Float32Array[][]): boolean {
    const block = input?.[0];
    if (block !== undefined) this.#pieces.push(block);
    return true;
  }
}

registerProcessor('capture', Capture);
