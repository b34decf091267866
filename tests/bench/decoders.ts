import { scaleDriver } from '../../hardware/scale/scale-driver.ts';
import type { Received } from '../../hardware/serial/link-driver.ts';
import { wandDriver } from '../../hardware/wand/wand-driver.ts';
import { FUZZED, sentBy } from '../hardware/fuzz.ts';
import { type Figure, ratePerSecond } from './table.ts';

/** What each decoder must do on one core, in frames a second. */
const GOAL = 200_000;
/** Frames that arrive in one chunk, and chunks in one round: short, so that few rounds are interrupted. */
const LOT = 100;
const ROUND = 5;
/** Longer than the time in which the same tag counts once. */
const WAVE_MS = 10_000;

/** How fast bytes become readings, format by format, through framer, decoder and the guard of widths. */
export function decoderFigures(): Figure[] {
  const scales = FUZZED.map((of) => {
    const { profile, frame } = sentBy(of);
    return figureOf(of.name, frame, (receive) => scaleDriver(profile, 'bench', () => 0).openSession(receive));
  });
  let now = 0;
  const tag = Buffer.from('982000123456789\r\n', 'latin1');
  const clock = (): number => {
    now += WAVE_MS;
    return now;
  };
  return [...scales, figureOf('wand-line', tag, (receive) => wandDriver(clock).openSession(receive))];
}

type Open = (receive: (received: Received<unknown>) => void) => (chunk: Uint8Array) => void;

/** Throws where not every frame became a reading, as then something else was measured. */
function figureOf(what: string, frame: Uint8Array, open: Open): Figure {
  const chunk = Buffer.concat(Array.from({ length: LOT }, () => frame));
  let [read, sent] = [0, 0];
  const push = open((received) => {
    if (received.kind === 'item') read += 1;
  });
  const rate =
    LOT *
    ratePerSecond(() => {
      push(chunk);
      sent += LOT;
    }, ROUND);
  // The first lines of a connection only teach the guard how long a line is.
  if (read < sent - 5) throw new Error(`${what}: ${sent - read} of ${sent} frames were not read`);
  return {
    what,
    ratio: rate / GOAL,
    against: `the goal of ${GOAL.toLocaleString('en-US')} frames/s`,
    raw: `${Math.round(rate).toLocaleString('en-US')} frames/s`,
  };
}
