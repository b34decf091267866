import type { PastVisit } from './score.ts';

/** A lean that sets in this soon after the last foot is not seen to set in, in seconds: the scale still follows. */
const UNSEEN = 0.3;

/**
 * The share of visits whose animal leaned, or had a hand on it, from before its weight could be seen until so many
 * seconds after the last foot.
 *
 * Till then the load is that of a lighter or a heavier animal standing free, but for the wandering of the lean.
 */
export function leanedFromTheStart(visits: readonly PastVisit[], seconds: number): number {
  const standing = visits.filter(({ stands }) => stands >= seconds);
  const leaning = standing.filter(({ spells, lastFootOn }) =>
    spells.some(
      ({ cause, from, until }) =>
        (cause === 'gate' || cause === 'handler') &&
        from < lastFootOn / 1000 + UNSEEN &&
        until > lastFootOn / 1000 + seconds,
    ),
  );
  return leaning.length / standing.length;
}
