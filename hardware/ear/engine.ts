import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { MODEL_FOLDER } from './dictionary.ts';

/** How the speech engine is started. */
export interface Engine {
  readonly program: string;
  readonly args: readonly string[];
}

/** Where `server/launch/ear.mjs` puts the compiled `listener.c`: the same file from sources and from the built server. */
const PLACES = ['../../dist/ear/listener', '../ear/listener'];

const SEARCHING = [
  // Phones out of their context: a hundredth of the work of phones in context, and as good a measure.
  ...['-allphone_ci', 'yes'],
  // Each word more must earn its place: in a noise short words such as "eight" are heard between others.
  ...['-wip', '0.05'],
  // The gate knows where speech is, and without holes a frame of the path is a moment of the sound.
  ...['-remove_silence', 'no'],
  // Scores are told against the best sound looked at: unless every search looks at all, theirs cannot be compared.
  ...['-compallsen', 'yes'],
];

/** The speech engine of this machine, or `null` where its program or its model is missing. */
export function findEngine(): Engine | null {
  const program = PLACES.map((place) => fileURLToPath(new URL(place, import.meta.url))).find(existsSync);
  if (program === undefined || !existsSync(`${MODEL_FOLDER}/en-us/mdef`)) return null;
  return { program, args: ['-hmm', `${MODEL_FOLDER}/en-us`, ...SEARCHING] };
}
