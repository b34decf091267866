import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { BLANK_DECK, feedDeck } from '../../../core/weighing/deck.ts';
import { doubtOf, type Held, USUAL_NEED } from '../../../core/weighing/settle.ts';
import type { Taken } from './baselines/method.ts';
import type { DeckVisit } from './visit.ts';

/** What the estimator made of a visit. */
export interface Estimated {
  readonly first: Held | null;
  /** The standard uncertainty of the first hold from motion and rounding alone, in grams: no scale errs here. */
  readonly uncertainty: number;
  /** What would have been held first where half the usual uncertainty is asked for. */
  readonly atHalf: Taken | null;
  /** Holds that replaced the first. */
  readonly later: readonly Held[];
}

const SPEC = { capacity: kilograms(400), division: null };

/** Half the usual need, as a share of the weight. */
const HALF_NEED = USUAL_NEED / 2;

/** Feeds a visit to the estimator, reading by reading, as the barn does. */
export function estimate(visit: DeckVisit): Estimated {
  let deck = BLANK_DECK;
  let atHalf: Taken | null = null;
  let uncertainty = Number.NaN;
  const holds: Held[] = [];
  const division = grams(visit.division);
  for (const { at, grams: shown } of visit.samples) {
    const reading = {
      role: 'platform',
      mass: grams(shown),
      division,
      stability: 'moving',
      net: false,
      zero: shown === 0,
      at,
    } as const;
    const next = feedDeck(deck, reading, SPEC);
    if (next.held !== null && next.held !== deck.held) {
      if (holds.length === 0) uncertainty = next.level?.uncertainty ?? Number.NaN;
      holds.push(next.held);
    }
    // No hold changes how a level is found, so what another need would have held can be read off it.
    if (atHalf === null && next.level !== null && next.verdict !== 'stepping-on')
      if (doubtOf(next.level, division, HALF_NEED) === null) atHalf = { grams: next.level.grams, at };
    deck = next;
  }
  const [first = null, ...later] = holds;
  return { first, uncertainty, atHalf, later };
}
