import type { ScaleRole } from '../../core/weighing/reading.ts';
import { guessPatterns, type PatternGuess } from '../../hardware/scale/pattern-guess.ts';
import { plainLineDriver } from '../../hardware/scale/plain-lines.ts';
import type { OpenPort } from '../../hardware/serial/connection.ts';
import { createLink, type Link } from '../../hardware/serial/link.ts';
import type { Timers } from '../../hardware/serial/timers.ts';
import { type Choice, firstUnit } from './choice.ts';

/** A scale of an unknown format whose lines are shown as they come. */
export interface LinesLink {
  readonly link: Link;
  /** The last lines, the newest at the end. */
  readonly lines: readonly string[];
  /** What may read them, the likeliest first. */
  readonly guesses: readonly PatternGuess[];
}

/** What listening to lines needs. */
export interface LinesOptions {
  readonly path: string;
  readonly baud: number;
  readonly openPort: OpenPort;
  readonly timers: Timers;
  readonly random: () => number;
  readonly changed: () => void;
}

/** Enough to hold a weight put on and taken off twice. */
const MOST_LINES = 600;
/** How often the lines are looked through for what may read them. */
const GUESS_EVERY_MS = 1000;

/** Opens a port and keeps the lines that come. */
export function openLines(options: LinesOptions): LinesLink {
  const { timers, changed, path, baud, openPort, random } = options;
  let lines: string[] = [];
  let guesses: readonly PatternGuess[] = [];
  let guessedAt = timers.now();
  const link = createLink({
    path,
    baud,
    driver: plainLineDriver(),
    openPort,
    timers,
    random,
    onState(state) {
      // Lines from two connections do not follow one another.
      if (state.status !== 'ready') {
        lines = [];
        guesses = [];
      }
      changed();
    },
    onItem(line) {
      lines = [...lines.slice(1 - MOST_LINES), line];
      if (timers.now() - guessedAt >= GUESS_EVERY_MS) {
        guessedAt = timers.now();
        guesses = guessPatterns(lines);
      }
      changed();
    },
  });
  return {
    link,
    get lines() {
      return lines;
    },
    get guesses() {
      return guesses;
    },
  };
}

/** A guess as a way to read the scale, to be tried and proved like any other. */
export function choiceOfGuess(guess: PatternGuess, role: ScaleRole, baud: number): Choice {
  const { pattern, unit, unitInLine, rest, moving, confidence, sample } = guess;
  const named = (mark: string) => (mark === '' ? 'nothing' : `“${mark}”`);
  const set = unitInLine ? null : (unit ?? firstUnit(role));
  return {
    profile: 'pattern',
    title: `At rest ${named(rest)}, moving ${named(moving)}`,
    baud,
    settings: { pattern, ...(set !== null && { unit: set }) },
    unit: unitInLine ? unit : set,
    unitKnown: unitInLine,
    confidence,
    sample,
  };
}
