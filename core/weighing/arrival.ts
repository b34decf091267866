import type { Level } from './level.ts';
import type { Past } from './past.ts';

/*
 * How an animal comes tells whether all of it, and it alone, is on the deck. Figures assumed of how goats and sheep walk,
 * and tuned on the bench's tuning set. All times in seconds.
 */

/** A rise shorter than this may be of fore feet only: a walk on takes half a second or more. */
const SHORT_RISE = 0.9;
const AFTER_SHORT_RISE = 2.8;
/** A rise longer than this may be of two animals and is watched for longer; from the second on it is hardly ever of one. */
const LONG_RISE = 2.35;
const VERY_LONG_RISE = 2.6;
/** A rest longer than this on the way up is one. */
const REST = 0.6;
/** An animal that stops half way rests with this share of itself on its fore feet, and comes within so long. */
const FORE_SHARE = [0.46, 0.66] as const;
const FORE_RISE = 4;
/** The most quiet asked for behind a rest on the fore feet, and the quiet behind any other very long rise. */
const AFTER_FORE_FEET = 4;
const AFTER_VERY_LONG_RISE = 8;

/** How long a load must not have been another before it is known that no hind feet follow, in seconds. */
export function restAfterRise({ rise }: Past): number {
  return rise < SHORT_RISE ? AFTER_SHORT_RISE : 0;
}

/** How much quiet shows that a load that came slowly, or in two goes, is of one animal, in seconds. */
export function quietAfterRise({ past, grams }: Level): number {
  const { rise, restBelow, restedAt } = past;
  const share = restedAt / grams;
  const onForeFeet = restBelow > REST && rise < FORE_RISE && share > FORE_SHARE[0] && share < FORE_SHARE[1];
  if (rise > VERY_LONG_RISE && !onForeFeet) return AFTER_VERY_LONG_RISE;
  const slow = rise > LONG_RISE ? 2 + 3 * (rise - LONG_RISE) : 0;
  const halting = restBelow > REST ? 1 + 4 * restBelow : 0;
  return Math.min(onForeFeet ? AFTER_FORE_FEET : AFTER_VERY_LONG_RISE, Math.max(slow, halting));
}

/** Where a load rested that was very long in coming, in grams, so that it can be asked about; `null` for any other. */
export function restBeforeLongRise({ rise, restedAt }: Past): number | null {
  return rise > VERY_LONG_RISE && restedAt > 0 ? restedAt : null;
}
