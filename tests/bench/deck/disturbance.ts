import type { Draws, Range } from './draws.ts';
import type { GradeParameters } from './parameters.ts';
import { createSignal, FINE_HZ, risen, type Signal } from './signal.ts';
import { addWandering } from './wandering.ts';

/** What takes weight off the deck or puts some on for a while, beside the animal's own motion. */
export type Cause = 'gate' | 'handler' | 'foot-off' | 'second-animal' | 'half-on';

/** A disturbance and when it was at work, in seconds. */
export interface Spell {
  readonly cause: Cause;
  readonly from: number;
  readonly until: number;
}

/** Draws the leaning, the hands and the lifted feet of a visit; adds their shares of weight to `signal`. */
export function disturb(
  draws: Draws,
  grade: GradeParameters,
  signal: Signal,
  from: number,
  until: number,
): Spell[] {
  const spells: Spell[] = [];
  const add = (cause: Cause, share: number, lasts: Range, ramp: Range, at: number): number => {
    const spell = { cause, from: at, until: at + draws.within(lasts) };
    addSpell(draws, signal, spell, share, draws.within(ramp));
    spells.push(spell);
    return spell.until;
  };
  const whenever = () => draws.within([from, until]);
  if (draws.chance(grade.gateLean)) add('gate', -draws.within([0.05, 0.2]), [1, 6], [0.2, 0.8], whenever());
  if (draws.chance(grade.handler)) {
    const size = draws.within([0.05, 0.2]);
    add('handler', draws.chance(0.5) ? size : -size, [0.5, 5], [0.15, 0.6], whenever());
  }
  let at = from + draws.waiting(grade.footOffPerSecond);
  while (at < until) {
    at = add('foot-off', -draws.within([0.1, 0.5]), [0.3, 3], [0.08, 0.2], at);
    at += draws.waiting(grade.footOffPerSecond);
  }
  return spells;
}

/** A share held for a while; a load between two supports is never held still, so it wanders by some of itself. */
function addSpell(draws: Draws, signal: Signal, spell: Spell, share: number, ramp: number): void {
  const wander = createSignal(signal.length / FINE_HZ);
  addWandering(draws, wander, draws.within([0.03, 0.15]), draws.within([0.2, 1]));
  for (let i = 0; i < signal.length; i += 1) {
    const t = i / FINE_HZ;
    const on = risen(t, spell.from, ramp) - risen(t, spell.until - ramp, ramp);
    if (on > 0) signal[i] = (signal[i] ?? 0) + share * on * (1 + (wander[i] ?? 0));
  }
}
