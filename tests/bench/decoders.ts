import { FUZZED, frameRate, wandRate } from '../hardware/fuzz.ts';
import type { Figure } from './table.ts';

/** What each decoder must do on one core, in frames a second. */
const GOAL = 200_000;

/** How fast bytes become readings, format by format. Throws where nothing was decoded, as then nothing was measured. */
export function decoderFigures(): Figure[] {
  return [...FUZZED.map((of) => figureOf(of.name, frameRate(of))), figureOf('wand-line', wandRate())];
}

function figureOf(what: string, rate: number): Figure {
  if (rate === 0) throw new Error(`${what}: nothing was decoded`);
  return {
    what,
    ratio: rate / GOAL,
    against: `the goal of ${GOAL.toLocaleString('en-US')} frames/s`,
    raw: `${Math.round(rate).toLocaleString('en-US')} frames/s`,
  };
}
