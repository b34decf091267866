import { spawnSync } from 'node:child_process';
import type { Heard } from '../../../core/speech/command.ts';
import type { MayBeHeard } from '../../../core/speech/may-be-heard.ts';
import { openDictionary } from '../../../hardware/ear/dictionary.ts';
import { createEar, type Ear, type Listening } from '../../../hardware/ear/ear.ts';
import { findEngine } from '../../../hardware/ear/engine.ts';
import { EAR_RATE } from '../../../hardware/ear/pcm.ts';
import { systemTimers } from '../../../hardware/serial/timers.ts';

/** True where the engine and a voice to test it with are installed; tests that need them say so when they are left out. */
export const earPresent = findEngine() !== null && spawnSync('flite', ['--version']).error === undefined;

/** An ear on the real engine, and all it told. */
export interface EarRig {
  readonly ear: Ear;
  readonly heard: readonly Heard[];
  readonly seen: readonly Listening[];
  /** Feeds 16 kHz mono and waits until it is worked through. */
  play(samples: Int16Array): Promise<void>;
  /** Waits until it shows this. Rejects after a minute. */
  until(listening: Listening): Promise<void>;
}

/** Starts an ear that may hear this. The test stops it. */
export async function startEarRig(may: MayBeHeard): Promise<EarRig> {
  const engine = findEngine();
  if (engine === null) throw new Error('the engine is missing');
  const heard: Heard[] = [];
  const seen: Listening[] = [];
  const ear = createEar({
    ...engine,
    dictionary: openDictionary(),
    timers: systemTimers(),
    random: () => 0.5,
    onHeard: (what) => heard.push(what),
    onListening: (listening) => seen.push(listening),
  });
  const until = async (listening: Listening): Promise<void> => {
    const end = performance.now() + 60_000;
    while (ear.listening !== listening) {
      if (performance.now() > end) throw new Error(`it is ${ear.listening}, not ${listening}`);
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
  };
  ear.setGrammar(may);
  ear.start();
  await until('waiting');
  const play = async (samples: Int16Array): Promise<void> => {
    for (let at = 0; at < samples.length; at += EAR_RATE / 20) {
      ear.feed(samples.subarray(at, at + EAR_RATE / 20), { rate: EAR_RATE, channels: 1 });
      await ear.settled();
    }
  };
  return { ear, heard, seen, play, until };
}
