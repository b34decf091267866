import { judgePart, judgePowder, type PowderVerdict } from '../mixing/powder.ts';
import type { Mass } from '../quantity/mass.ts';
import { distance } from '../quantity/quantity.ts';

/** What the scale says while the powder should arrive: how much of it, or that the jug is not where it was. */
export type PowderWatch = PowderVerdict | 'jug-lifted' | 'jug-changed';

/** What has been seen of the powder so far. */
export interface PowderSeen {
  readonly verdict: PowderWatch;
  /** The rise when the jug last stood there at rest. */
  readonly seen: Mass;
}

/** A jug that comes back may differ by this many divisions from what it was, or as many grams. */
const SAME_JUG = 3;

/**
 * Takes one rise at rest into what was seen of whole packets.
 *
 * Too much, and a jug that came back as another, stay: what is in it is not known any more. A jug lifted to be
 * filled at the table may come back with all its powder in it.
 */
export function watchPowder(before: PowderSeen, rise: Mass, powder: Mass, division: Mass): PowderSeen {
  if (before.verdict === 'too-much') return before;
  const verdict = judgePowder(rise, powder, division);
  return watchJug(before, rise, division, verdict, verdict === 'whole');
}

/** The same for a part that is weighed in: too much of it is no fault, since the strength follows. */
export function watchPart(before: PowderSeen, rise: Mass, powder: Mass, division: Mass): PowderSeen {
  return watchJug(before, rise, division, judgePart(rise, powder, division), false);
}

function watchJug(
  before: PowderSeen,
  rise: Mass,
  division: Mass,
  verdict: PowderVerdict,
  mayComeBackSo: boolean,
): PowderSeen {
  if (before.verdict === 'jug-changed') return before;
  const slack = SAME_JUG * Math.max(division.value, 1);
  if (rise.value < -slack) return { ...before, verdict: 'jug-lifted' };
  const cameBack = before.verdict === 'jug-lifted';
  if (cameBack && !mayComeBackSo && distance(rise, before.seen).value > slack) {
    return { ...before, verdict: 'jug-changed' };
  }
  return { verdict, seen: rise };
}
