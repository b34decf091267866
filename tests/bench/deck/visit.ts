import { moveBody } from './body.ts';
import { disturb, type Spell } from './disturbance.ts';
import { createDraws, type Draws } from './draws.ts';
import { landLegs } from './landing.ts';
import type { Grade, ParameterSet } from './parameters.ts';
import { ring, type Sample, sample, smooth } from './platform.ts';
import { createSignal, FINE_HZ, type Signal } from './signal.ts';

/** One animal over the deck, as a scale saw it, and what is known of it that no scale can tell. */
export interface DeckVisit {
  readonly seed: number;
  readonly grade: Grade;
  readonly hz: number;
  readonly division: number;
  /** What the animal weighs, in grams. */
  readonly truth: number;
  /** When the last foot has taken up its load, in milliseconds. */
  readonly lastFootOn: number;
  /** How long all feet are on before the first leaves, in seconds. */
  readonly stands: number;
  readonly spells: readonly Spell[];
  readonly samples: readonly Sample[];
}

/** An empty deck before the first foot, in seconds. */
const BEFORE = 1.2;
const BEHIND = 1.5;

/** Makes the visit of a seed: the same seed of the same set is the same visit. */
export function makeVisit(set: ParameterSet, grade: Grade, seed: number): DeckVisit {
  const draws = createDraws(seed);
  const parameters = set.grades[grade];
  const truth = draws.logWithin(set.weightGrams);
  const early = draws.chance(set.earlyExit.chance);
  const stands = draws.within(early ? set.earlyExit.stands : set.stands);
  const seconds = BEFORE + 3 * set.walkOn[1] + set.halfOn.lasts[1] + stands + BEHIND;
  const landing = landLegs(draws, set, BEFORE, stands, seconds);
  const motion = moveGraded(draws, set, grade, seconds);
  const spells = disturb(draws, parameters, motion, BEFORE, landing.lastFootOn + stands);
  const { share, lastFootOn, halfOn } = landing;
  const load = createSignal(seconds);
  for (let i = 0; i < load.length; i += 1)
    load[i] = Math.max(0, truth * (share[i] ?? 0) * (1 + (motion[i] ?? 0)));
  if (halfOn) spells.push({ cause: 'half-on', from: BEFORE, until: lastFootOn });
  if (draws.chance(set.secondAnimal.chance))
    spells.push(followOn(draws, set, grade, truth, load, lastFootOn, stands));
  ring(draws, load, set);
  smooth(draws, load, set);
  const hz = draws.oneOf(set.rates);
  const division = draws.oneOf(set.divisions);
  const samples = sample(draws, load, set, hz, division);
  return { seed, grade, hz, division, truth, lastFootOn: 1000 * lastFootOn, stands, spells, samples };
}

/** Draws a body's motion until its coefficient of variation falls into the grade's band. */
function moveGraded(draws: Draws, set: ParameterSet, grade: Grade, seconds: number): Signal {
  const parameters = set.grades[grade];
  const [low, high] = parameters.variation;
  for (let tries = 0; tries < 200; tries += 1) {
    const motion = moveBody(draws, parameters, seconds);
    const variation = variationOf(motion);
    if (variation >= low && variation < high) return motion;
  }
  throw new Error(`no motion of a ${grade} animal has a variation of ${low} to ${high}`);
}

function variationOf(motion: Signal): number {
  let sum = 0;
  let squares = 0;
  for (const value of motion) {
    sum += value;
    squares += value * value;
  }
  const mean = sum / motion.length;
  return Math.sqrt(Math.max(0, squares / motion.length - mean * mean)) / (1 + mean);
}

/** A second animal steps on while the first stands there, and leaves with it. */
function followOn(
  draws: Draws,
  set: ParameterSet,
  grade: Grade,
  truth: number,
  load: Signal,
  lastFootOn: number,
  stands: number,
): Spell {
  const from = lastFootOn + draws.within([0, stands]);
  const seconds = load.length / FINE_HZ;
  const until = lastFootOn + stands;
  const second = landLegs(draws, set, from, Math.max(0, until - from), seconds);
  const motion = moveBody(draws, set.grades[grade], seconds);
  const weight = truth * draws.within(set.secondAnimal.share);
  for (let i = 0; i < load.length; i += 1)
    load[i] = Math.max(0, (load[i] ?? 0) + weight * (second.share[i] ?? 0) * (1 + (motion[i] ?? 0)));
  return { cause: 'second-animal', from, until };
}
