import type { MayBeHeard } from '../../../core/speech/may-be-heard.ts';
import { EAR_RATE } from '../../../hardware/ear/pcm.ts';
import { seededRandom } from '../../../hardware/simulator/random.ts';
import type { Said } from './cases.ts';
import { type Condition, mixAt } from './mix.ts';
import { NOISES } from './noise.ts';
import { type Outcome, type Rig, startRig } from './rig.ts';
import { type Speaker, speak } from './speakers.ts';

/** One sentence said in one condition, and what came of it. */
export interface Trial {
  readonly said: Said;
  readonly speaker: Speaker;
  readonly condition: Condition;
  readonly outcome: Outcome;
}

/** Sentences to be said at one loudness over the noise, all in the same grammar. */
export interface Block {
  readonly may: MayBeHeard;
  readonly snrDb: number;
  readonly said: readonly Said[];
}

const AROUND = { before: EAR_RATE / 2, after: 7 * EAR_RATE };

/**
 * Says every sentence of the blocks, shared out among the speakers; noises and rooms change from sentence to sentence
 * but a speaker stays, as one keeper does. Each speaker gets an ear of its own.
 */
export async function runTrials(
  blocks: readonly Block[],
  speakers: readonly Speaker[],
  onTrial: (trial: Trial) => void = () => {},
): Promise<Trial[]> {
  const trials: Trial[] = [];
  for (const block of blocks) {
    for (const [which, speaker] of speakers.entries()) {
      const rig = await startRig(block.may);
      const own = block.said.filter((_, i) => i % speakers.length === which);
      for (const [i, said] of own.entries()) {
        const trial = await sayOne(rig, speaker, said, block.snrDb, i);
        onTrial(trial);
        trials.push(trial);
      }
      await rig.stop();
    }
  }
  return trials;
}

async function sayOne(rig: Rig, speaker: Speaker, said: Said, snrDb: number, i: number): Promise<Trial> {
  const noise = NOISES[i % NOISES.length] ?? 'pink';
  const condition = { noise, snrDb, room: Math.floor(i / NOISES.length) % 2 === 1 };
  const { samples, speechEnds } = mixAt(speak(speaker, said.text), condition, AROUND, 31 * i + snrDb);
  return { said, speaker, condition, outcome: await rig.play(samples, speechEnds) };
}

/**
 * So many of a list, by chance but always the same. A list that runs out is shuffled anew, so that a sentence comes
 * back in another voice and noise.
 */
export function someOf<T>(list: readonly T[], count: number, seed: number): T[] {
  const random = seededRandom(seed);
  const some: T[] = [];
  while (some.length < count) {
    const shuffled = list.map((item) => ({ item, at: random() })).sort((a, b) => a.at - b.at);
    some.push(...shuffled.slice(0, count - some.length).map(({ item }) => item));
  }
  return some;
}
