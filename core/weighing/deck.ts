import { grams, type Mass } from '../quantity/mass.ts';
import type { Reading, ScaleSpec } from './reading.ts';
import { type Held, type Sample, settle } from './settle.ts';

/** What the platform seems to be carrying. */
export type DeckVerdict =
  | 'blank'
  | 'fault'
  | 'net'
  | 'not-zeroed'
  | 'empty'
  | 'stepping-on'
  | 'settling'
  | 'held'
  | 'stepping-off';

/** The platform under a live animal: what it shows now, and the weight it held while the animal stood. */
export interface Deck {
  readonly verdict: DeckVerdict;
  /** The last reading's mass; `null` whenever it is not current or not usable. */
  readonly live: Mass | null;
  /** The weight held since the last step-on; it ends with the next step-on or when the link goes. */
  readonly held: Held | null;
  readonly division: Mass | null;
  /** Uptime of the last reading that stood at zero; `null` when none has since the link came up. */
  readonly zeroAt: number | null;
  /** Uptime of the step-on; `null` while nothing stands on the deck. */
  readonly onSince: number | null;
  /** Uptime since when the load has been below the step-off limit; `null` while loaded. */
  readonly lightSince: number | null;
  readonly samples: readonly Sample[];
}

/** A deck of which nothing is known: no link, or a link that has just gone. */
export const BLANK_DECK: Deck = {
  verdict: 'blank',
  live: null,
  held: null,
  division: null,
  zeroAt: null,
  onSince: null,
  lightSince: null,
  samples: [],
};

/** An animal counts as on from ten divisions, or half a kilogram where that is more. */
function stepOnLimit(division: Mass): number {
  return Math.max(10 * division.value, 500);
}

/** A load this small still counts as zero, in grams, on a scale whose division is finer. */
const NEAR_ZERO = 50;
/** How long after standing at zero a load may still appear and count as stepping on from zero. */
const ZERO_GRACE_MS = 2500;
/** How long the deck must stay light before the animal counts as gone: a hop is not a departure. */
const LEFT_AFTER_MS = 400;
/** The ramp of an animal walking on is not weighed. */
const STEP_ON_MS = 400;
/** Readings older than this are forgotten. */
const MEMORY_MS = 6500;

/** Takes one reading into the deck. Unusable readings blank the value and end the run-up to a hold, never a held weight. */
export function feedDeck(deck: Deck, reading: Reading, spec: ScaleSpec): Deck {
  const division = spec.division ?? reading.division;
  const unusable = whyUnusable(reading, spec);
  if (unusable !== null) {
    return { ...deck, verdict: unusable, live: null, division, zeroAt: null, samples: [] };
  }
  const load = Math.abs(reading.mass.value);
  const limit = stepOnLimit(division);
  const zeroAt = reading.zero || load <= Math.max(division.value, NEAR_ZERO) ? reading.at : deck.zeroAt;
  const next = { ...deck, live: reading.mass, division, zeroAt };
  return deck.onSince === null ? feedEmpty(next, reading, limit) : feedLoaded(next, reading, limit, division);
}

function whyUnusable(reading: Reading, spec: ScaleSpec): 'fault' | 'net' | null {
  if (reading.fault !== undefined || reading.mass.value > spec.capacity.value) return 'fault';
  return reading.net ? 'net' : null;
}

function feedEmpty(deck: Deck, reading: Reading, limit: number): Deck {
  if (reading.mass.value < limit) {
    const zeroed = deck.zeroAt !== null && reading.at - deck.zeroAt <= ZERO_GRACE_MS;
    return { ...deck, verdict: zeroed ? 'empty' : 'not-zeroed', samples: [] };
  }
  const fromZero = deck.zeroAt !== null && reading.at - deck.zeroAt <= ZERO_GRACE_MS;
  if (!fromZero) return { ...deck, verdict: 'not-zeroed', samples: [] };
  return { ...deck, verdict: 'stepping-on', held: null, onSince: reading.at, lightSince: null, samples: [] };
}

function feedLoaded(deck: Deck, reading: Reading, limit: number, division: Mass): Deck {
  const onSince = deck.onSince ?? reading.at;
  if (reading.mass.value < limit / 2) {
    const lightSince = deck.lightSince ?? reading.at;
    const left = reading.at - lightSince >= LEFT_AFTER_MS;
    if (!left) return { ...deck, verdict: 'stepping-off', lightSince, samples: [] };
    return { ...deck, verdict: 'empty', onSince: null, lightSince: null, samples: [] };
  }
  if (reading.at - onSince < STEP_ON_MS) return { ...deck, verdict: 'stepping-on', lightSince: null };
  const sample = { at: reading.at, grams: reading.mass.value, stable: reading.stability === 'stable' };
  const samples = [...deck.samples.filter((s) => reading.at - s.at <= MEMORY_MS), sample];
  const held = settle(samples, division, deck.held);
  return { ...deck, verdict: held === null ? 'settling' : 'held', held, lightSince: null, samples };
}

/** The mass on the deck that the screen may show, or `null` where no current value exists. */
export function shownMass(deck: Deck): Mass | null {
  if (deck.live === null) return null;
  return deck.verdict === 'empty' ? grams(0) : deck.live;
}
