import type { Heard } from '../../../core/speech/command.ts';
import type { MayBeHeard } from '../../../core/speech/may-be-heard.ts';
import { openDictionary } from '../../../hardware/ear/dictionary.ts';
import { createEar, type Ear } from '../../../hardware/ear/ear.ts';
import { findEngine } from '../../../hardware/ear/engine.ts';
import { EAR_RATE } from '../../../hardware/ear/pcm.ts';
import { systemTimers } from '../../../hardware/serial/timers.ts';

/** What an ear made of one sentence fed to it. */
export interface Outcome {
  /** Everything it told of the sound, in order. */
  readonly heard: readonly Heard[];
  /** From the end of the speech until the first was told, in ms: of sound waited for, and of work after it. */
  readonly waitMs: number | null;
  readonly workMs: number | null;
}

/** An ear fed by a bench. */
export interface Rig {
  readonly ear: Ear;
  /**
   * Feeds a sound faster than a microphone would, until some time after its speech when the ear is done with it: what
   * is left unheard would be taken for the next.
   */
  play(samples: Int16Array, speechEnds: number): Promise<Outcome>;
  stop(): Promise<void>;
}

/** As often as the ear asks: delays are told no finer than this. */
const PIECE = 0.03 * EAR_RATE;
const AFTER = 0.8 * EAR_RATE;
const dictionary = lazily(openDictionary);

/** Starts an ear that may hear this; rejects where the engine is not installed. */
export async function startRig(may: MayBeHeard): Promise<Rig> {
  const engine = findEngine();
  if (engine === null) throw new Error('the speech engine is missing: install it with npm test');
  let heard: { what: Heard; fed: number; workMs: number }[] = [];
  let fed = 0;
  let lastFedAt = 0;
  const ear = createEar({
    ...engine,
    dictionary: dictionary(),
    timers: systemTimers(),
    random: Math.random,
    onHeard: (what) => heard.push({ what, fed, workMs: performance.now() - lastFedAt }),
    onListening: () => {},
  });
  ear.setGrammar(may);
  ear.start();
  while (ear.listening !== 'waiting') await new Promise((resolve) => setTimeout(resolve, 20));
  return {
    ear,
    async play(samples, speechEnds) {
      heard = [];
      fed = 0;
      const enough = speechEnds + AFTER;
      for (let at = 0; at < samples.length && (at < enough || ear.listening === 'hearing'); at += PIECE) {
        const piece = samples.subarray(at, at + PIECE);
        fed += piece.length;
        lastFedAt = performance.now();
        ear.feed(piece, { rate: EAR_RATE, channels: 1 });
        await ear.settled();
      }
      const [first] = heard;
      return {
        heard: heard.map(({ what }) => what),
        waitMs: first === undefined ? null : (1000 * (first.fed - speechEnds)) / EAR_RATE,
        workMs: first?.workMs ?? null,
      };
    },
    stop: () => ear.stop(),
  };
}

/** The value of a function that is called once, when it is first asked for. */
function lazily<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}
