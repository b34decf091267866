import { fromSteps, stepsIn } from '../quantity/round.ts';
import { millilitres, type Volume } from '../quantity/volume.ts';
import { drawTolerance, type Syringe } from './syringe.ts';
import { rectangular } from './uncertainty.ts';

/** How to measure a dose with one syringe. */
export interface SyringePlan {
  readonly syringe: Syringe;
  /** The marks to draw to, one for each draw, largest first. */
  readonly draws: readonly Volume[];
  /** The sum of the draws: what is shown, said, labelled and logged. */
  readonly total: Volume;
  /** Standard uncertainty of the total as a share of it (k = 1): tolerance, and half a mark of reading each draw. */
  readonly relative: number;
  /** How far rounding to the marks moved the dose, as a share of the exact one; negative is less. */
  readonly rounding: number;
}

/** A way to draw, as counts of marks; scored without building the plan, since most are thrown away. */
interface Candidate {
  readonly syringe: Syringe;
  /** Marks of the whole dose. */
  readonly marks: number;
  readonly draws: number;
  readonly relative: number;
  readonly rounding: number;
  /** Rounding and twice the relative uncertainty together, as a share of the dose. */
  readonly error: number;
}

/** More draws than this are not asked of one hand. */
export const MAX_DRAWS = 3;
/** Total errors this close, as shares of the dose, are as good as each other. */
export const AS_GOOD = 0.02;
/** A draw that cannot be measured within this share is not offered. */
export const WORST_DRAW = 0.1;

/**
 * The best way to measure an exact volume with the syringes on hand, or `null` where none can.
 *
 * Best is the smallest total error (rounding and syringe together); among those that come within two hundredths of
 * the dose of it, the fewest draws, then the smaller syringe: a hand pays more for a further draw than the dose gains.
 * The total is the mark nearest the exact dose, or the last one below `most`, shared evenly among the draws: a
 * tolerance grows ever faster with the draw, so no other sharing is better. No draw is smaller than its syringe
 * measures within 10 %.
 */
export function planSyringe(exact: Volume, most: Volume, syringes: readonly Syringe[]): SyringePlan | null {
  const candidates: Candidate[] = [];
  for (const syringe of syringes) addCandidates(candidates, syringe, exact.value, most.value);
  let least = Number.POSITIVE_INFINITY;
  for (const { error } of candidates) least = Math.min(least, error);
  let best: Candidate | null = null;
  for (const candidate of candidates) {
    if (candidate.error > least + AS_GOOD) continue;
    if (best === null || simplestFirst(candidate, best) < 0) best = candidate;
  }
  return best === null ? null : planOf(best);
}

function addCandidates(found: Candidate[], syringe: Syringe, exact: number, most: number): void {
  const graduation = syringe.graduation.value;
  const nearest = stepsIn(exact, graduation, 'nearest');
  const marks = Math.min(nearest, stepsIn(most, graduation, 'down'));
  const perDraw = stepsIn(syringe.capacity.value, graduation, 'down');
  const fewest = Math.max(1, Math.ceil(marks / perDraw));
  for (let draws = fewest; draws <= MAX_DRAWS && draws <= marks; draws += 1) {
    const candidate = scored(syringe, marks, draws, exact);
    if (candidate !== null) found.push(candidate);
  }
}

/** Scores a way to draw, or `null` where a draw of it is too small for its syringe. */
function scored(syringe: Syringe, marks: number, draws: number, exact: number): Candidate | null {
  const graduation = syringe.graduation.value;
  const { small, larger } = shared(marks, draws);
  const smallDraw = small * graduation;
  const offSmall = drawTolerance(syringe, millilitres(smallDraw)).value;
  if (offSmall > WORST_DRAW * smallDraw + DUST) return null;
  let off = (draws - larger) * offSmall;
  if (larger > 0) {
    const largeDraw = smallDraw + graduation;
    const offLarge = drawTolerance(syringe, millilitres(largeDraw)).value;
    if (offLarge > WORST_DRAW * largeDraw + DUST) return null;
    off += larger * offLarge;
  }
  // One syringe is off by the same share at every draw, so its tolerances add; the readings are independent.
  const tolerance = rectangular(off);
  const reading = rectangular(graduation / 2) * Math.sqrt(draws);
  const total = marks * graduation;
  const relative = Math.sqrt(tolerance * tolerance + reading * reading) / total;
  const rounding = total / exact - 1;
  return { syringe, marks, draws, relative, rounding, error: Math.abs(rounding) + 2 * relative };
}

/** A draw exactly at the limit, in mL, counts as within it whichever way its binary dust falls. */
const DUST = 1e-12;

/** Marks shared evenly: `larger` draws of one mark more than `small`. */
function shared(marks: number, draws: number): { small: number; larger: number } {
  const small = Math.floor(marks / draws);
  return { small, larger: marks - small * draws };
}

function planOf({ syringe, marks, draws, relative, rounding }: Candidate): SyringePlan {
  const graduation = syringe.graduation.value;
  const { small, larger } = shared(marks, draws);
  return {
    syringe,
    draws: Array.from({ length: draws }, (_, draw) =>
      millilitres(fromSteps(draw < larger ? small + 1 : small, graduation)),
    ),
    total: millilitres(fromSteps(marks, graduation)),
    relative,
    rounding,
  };
}

function simplestFirst(a: Candidate, b: Candidate): number {
  return a.draws - b.draws || a.syringe.capacity.value - b.syringe.capacity.value || a.error - b.error;
}
