import type { Wav } from './wav.ts';

/** How an utterance is to sound. */
export interface Voicing {
  /** Id of one of the voices. */
  readonly voice: string;
  /** Words a minute. */
  readonly rate: number;
}

/** Turns text into sound. */
export interface Mouth {
  /** Renders a line of text. Rejects with a {@link MouthError} where the engine cannot, however often it is tried. */
  render(text: string, voicing: Voicing): Promise<Wav>;
  /** Gets ready to speak so: the next line begins sooner. */
  warm(voicing: Voicing): void;
  /** Ends whatever the engine runs. */
  stop(): void;
}

/** The engine gave no sound; the message says why. */
export class MouthError extends Error {}
