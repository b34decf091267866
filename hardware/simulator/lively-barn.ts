import { grams, kilograms, massIn } from '../../core/quantity/mass.ts';
import type { TimerHandle, Timers } from '../serial/timers.ts';
import type { SimulatedBarn } from './barn.ts';
import { between, seededRandom } from './random.ts';

/** A barn in which things happen by themselves, until it is stopped. */
export interface LivelyBarn {
  stop(): void;
}

/** The pause before the next happening in each of the two rows, in milliseconds. */
const TAG_TO_STEP_MS = 3000;
const STANDS_MS = 12_000;
const DECK_EMPTY_MS = 6000;
const JUG_MS = 4000;
const POUR_MS = 25_000;

/**
 * Leads a restless animal on and off with its tag read before, and beside it fills one jug after another.
 *
 * `say` is told each happening in a line of its own.
 */
export function startLivelyBarn(
  barn: SimulatedBarn,
  timers: Timers,
  seed: number,
  say: (line: string) => void,
): LivelyBarn {
  const random = seededRandom(seed);
  const waiting = new Map<string, TimerHandle>();
  function next(row: string, afterMs: number, run: () => void): void {
    waiting.set(row, timers.set(run, afterMs));
  }

  function read(): void {
    const tag = `9820000010${String(Math.floor(between(random, 0, 100_000))).padStart(5, '0')}`;
    say(`wand: ${tag}`);
    barn.wand.presentTag(tag);
    next('deck', TAG_TO_STEP_MS, stepOn);
  }
  function stepOn(): void {
    const mass = kilograms(between(random, 8, 70));
    say(`platform: ${massIn(mass, 'kg').toFixed(2)} kg steps on`);
    barn.platform.leadOn({ mass, grade: 'restless' });
    next('deck', STANDS_MS, stepOff);
  }
  function stepOff(): void {
    say('platform: steps off');
    barn.platform.walkOff();
    next('deck', DECK_EMPTY_MS, read);
  }

  function setDown(): void {
    say('bench: an empty jug');
    barn.bench.placeJug(grams(212));
    next('jug', JUG_MS, pour);
  }
  function pour(): void {
    say('bench: water runs in');
    barn.bench.pour(grams(40), grams(between(random, 800, 950)));
    next('jug', POUR_MS, powder);
  }
  function powder(): void {
    say('bench: powder');
    barn.bench.addPowder(grams(52));
    next('jug', JUG_MS, lift);
  }
  function lift(): void {
    say('bench: the jug is taken away');
    barn.bench.liftJug();
    next('jug', JUG_MS, setDown);
  }

  next('deck', JUG_MS, read);
  next('jug', JUG_MS, setDown);
  return {
    stop() {
      for (const timer of waiting.values()) timers.clear(timer);
    },
  };
}
