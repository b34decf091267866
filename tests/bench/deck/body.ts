import type { Draws } from './draws.ts';
import type { GradeParameters } from './parameters.ts';
import { addBump, createSignal, FINE_HZ, type Signal } from './signal.ts';
import { addWandering } from './wandering.ts';

/** How a body moves on its feet, as a share of its weight over time. The mean is not zero: landings outweigh lifts. */
export function moveBody(draws: Draws, grade: GradeParameters, seconds: number): Signal {
  const motion = createSignal(seconds);
  addBreathing(draws, motion, grade);
  const corner = draws.within(grade.shifting.cornerHz);
  addWandering(draws, motion, draws.logWithin(grade.shifting.share), 1 / (2 * Math.PI * corner));
  addBursts(draws, motion, grade, seconds);
  return motion;
}

/** Breathing whose rate wanders by a fifth and whose in-breath is the shorter. */
function addBreathing(draws: Draws, motion: Signal, { breathing }: GradeParameters): void {
  const share = draws.within(breathing.share);
  const perSecond = draws.within(breathing.perSecond);
  const rate = new Float64Array(motion.length);
  addWandering(draws, rate, 0.2, 4);
  let phase = draws.within([0, 2 * Math.PI]);
  for (let i = 0; i < motion.length; i += 1) {
    phase += (2 * Math.PI * perSecond * Math.max(0.3, 1 + (rate[i] ?? 0))) / FINE_HZ;
    motion[i] = (motion[i] ?? 0) + share * Math.sin(phase + 0.4 * Math.sin(phase));
  }
}

function addBursts(draws: Draws, motion: Signal, { bursts }: GradeParameters, seconds: number): void {
  const perSecond = draws.within(bursts.perSecond);
  const more = draws.within(bursts.more);
  for (let at = draws.waiting(perSecond); at < seconds; at += draws.waiting(perSecond)) {
    do at = addStep(draws, motion, at, draws.within(bursts.share));
    while (draws.chance(more));
  }
}

/** A foot lifted and put down: first the deck is unloaded, then knocked, the knock being the greater impulse. */
function addStep(draws: Draws, motion: Signal, at: number, share: number): number {
  const lift = draws.within([0.1, 0.25]);
  const knock = draws.within([0.06, 0.18]);
  const lifted = share * draws.within([0.3, 0.8]);
  const asymmetry = draws.within([1.05, 1.8]);
  addBump(motion, at, lift, -lifted);
  addBump(motion, at + lift, knock, (asymmetry * lifted * lift) / knock);
  return at + lift + knock + draws.within([0.02, 0.4]);
}
