import { firstTaken, type Method, type Setting } from './baselines/method.ts';
import { GRADES } from './parameters.ts';
import { scoreOf } from './score.ts';
import type { DeckVisit } from './visit.ts';

/** The most false holds a setting may have over all grades, as a share, to be chosen. */
const MOST_FALSE = 0.02;
/** A refused animal costs as much time as this, in seconds: a method is not to be quick by seldom holding. */
const REFUSAL_SECONDS = 10;

/**
 * Chooses a method's best setting on the tuning visits: the quickest of those that hold false seldom enough.
 *
 * One setting serves all grades, since no scale knows beforehand who steps on. Where every setting holds false
 * too often, the one that does so least is taken.
 */
export function tune(method: Method, visits: readonly DeckVisit[]): Setting {
  let best: { setting: Setting; tooFalse: number; cost: number } | null = null;
  for (const setting of method.settings) {
    const outcomes = visits.map((visit) => ({
      visit,
      taken: firstTaken(method, setting, visit.samples, visit.division),
    }));
    const tooFalse = Math.max(0, scoreOf(outcomes).falseHolds - MOST_FALSE);
    const cost = GRADES.reduce((sum, grade) => {
      const { refused, medianSeconds } = scoreOf(outcomes.filter(({ visit }) => visit.grade === grade));
      return sum + refused * REFUSAL_SECONDS + (refused < 1 ? (1 - refused) * medianSeconds : 0);
    }, 0);
    const better =
      best === null || tooFalse < best.tooFalse || (tooFalse === best.tooFalse && cost < best.cost);
    if (better) best = { setting, tooFalse, cost };
  }
  if (best === null) throw new Error(`${method.name} has no settings`);
  return best.setting;
}
