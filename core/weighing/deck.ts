import type { Mass } from '../quantity/mass.ts';
import { addReading, type Block } from './blocks.ts';
import { findLevel, type Level } from './level.ts';
import type { Reading, ScaleSpec } from './reading.ts';
import { departure, doubtOf, type Held, settle, USUAL_NEED } from './settle.ts';

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
  /** The load is not that of an animal standing free: a gate, a hand, or a foot beside the deck. */
  | 'leaning'
  /** The load rose as if another animal had come. */
  | 'two-animals'
  | 'stepping-off';

/** The platform under a live animal: what it shows now, and the weight it held while the animal stood. */
export interface Deck {
  readonly verdict: DeckVerdict;
  /** The last reading's mass; `null` whenever it is not current or not usable. */
  readonly live: Mass | null;
  /** The weight held since the last step-on; it ends with the next step-on or when the link goes. */
  readonly held: Held | null;
  /** What the animal seems to weigh at this instant, held or not; `null` while there is nothing to go by. */
  readonly level: Level | null;
  readonly division: Mass | null;
  /** Whether the scale itself said with the last reading that the load moves; a format without such a flag never does. */
  readonly moving: boolean;
  /** Uptime of the last reading that stood at zero; `null` when none has since the link came up. */
  readonly zeroAt: number | null;
  /** Uptime of the step-on; `null` while nothing stands on the deck. */
  readonly onSince: number | null;
  /** Uptime since when the load has been below the step-off limit; `null` while loaded. */
  readonly lightSince: number | null;
  /** Uptime since when readings have been unusable with something on the deck; `null` while they are usable. */
  readonly unseenSince: number | null;
  /** The readings since the step-on, by tenths of a second; never more than so many. */
  readonly blocks: readonly Block[];
}

/** A deck of which nothing is known: no link, or a link that has just gone. */
export const BLANK_DECK: Deck = {
  verdict: 'blank',
  live: null,
  held: null,
  level: null,
  division: null,
  moving: false,
  zeroAt: null,
  onSince: null,
  lightSince: null,
  unseenSince: null,
  blocks: [],
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
/** What is left of the load, as a share of what stood there, when the animal has gone: dung stays behind. */
const LEFT_BEHIND = 0.25;
/** Behind readings that cannot be used for this long, another animal may have taken the place. */
const UNSEEN_MS = 1000;
/** For this long no more is said than that an animal is walking on. */
const STEP_ON_MS = 400;
/**
 * Takes one reading into the deck. Unusable readings blank the value and end the run-up to a hold, never a held weight.
 *
 * `need` is how well the weight must be known to be held, as a standard uncertainty relative to it; above 0. The
 * scale's own doubt is in what is held beside it, and does not stand in the way: no waiting makes it smaller.
 */
export function feedDeck(deck: Deck, reading: Reading, spec: ScaleSpec, need: number = USUAL_NEED): Deck {
  const division = spec.division ?? reading.division;
  const unusable = whyUnusable(reading, spec);
  if (unusable !== null) return { ...unseen(deck, reading), verdict: unusable, division };
  const load = Math.abs(reading.mass.value);
  const limit = stepOnLimit(division);
  const zeroAt = load <= Math.max(division.value, NEAR_ZERO) ? reading.at : deck.zeroAt;
  const moving = reading.stability === 'moving';
  const next = { ...deck, live: reading.mass, division, moving, zeroAt, unseenSince: null };
  return deck.onSince === null
    ? feedEmpty(next, reading, limit)
    : feedLoaded(next, reading, limit, division, need);
}

/** A reading that cannot be used: shown as nothing, and after a second nobody knows who stands there. */
function unseen(deck: Deck, reading: Reading): Deck {
  const unseenSince = deck.unseenSince ?? reading.at;
  const lost = reading.at - unseenSince >= UNSEEN_MS;
  const onSince = lost ? null : deck.onSince;
  return {
    ...deck,
    live: null,
    zeroAt: null,
    level: null,
    blocks: [],
    unseenSince,
    onSince,
    lightSince: null,
  };
}

function whyUnusable(reading: Reading, spec: ScaleSpec): 'fault' | 'net' | null {
  if (reading.fault !== undefined || reading.mass.value > spec.capacity.value) return 'fault';
  return reading.net ? 'net' : null;
}

function feedEmpty(deck: Deck, reading: Reading, limit: number): Deck {
  if (reading.mass.value < limit) {
    const zeroed = deck.zeroAt !== null && reading.at - deck.zeroAt <= ZERO_GRACE_MS;
    return { ...deck, verdict: zeroed ? 'empty' : 'not-zeroed', level: null, blocks: [] };
  }
  const fromZero = deck.zeroAt !== null && reading.at - deck.zeroAt <= ZERO_GRACE_MS;
  if (!fromZero) return { ...deck, verdict: 'not-zeroed', level: null, blocks: [] };
  return {
    ...deck,
    verdict: 'stepping-on',
    held: null,
    onSince: reading.at,
    lightSince: null,
    level: null,
    blocks: [],
  };
}

function feedLoaded(deck: Deck, reading: Reading, limit: number, division: Mass, need: number): Deck {
  const onSince = deck.onSince ?? reading.at;
  if (reading.mass.value < Math.max(limit / 2, LEFT_BEHIND * stoodThere(deck))) {
    const lightSince = deck.lightSince ?? reading.at;
    const left = reading.at - lightSince >= LEFT_AFTER_MS;
    if (!left) return { ...deck, verdict: 'stepping-off', lightSince };
    const zeroed = deck.zeroAt !== null && reading.at - deck.zeroAt <= ZERO_GRACE_MS;
    return {
      ...deck,
      verdict: zeroed ? 'empty' : 'not-zeroed',
      onSince: null,
      lightSince: null,
      level: null,
      blocks: [],
    };
  }
  // After a hop the weighing begins anew.
  const earlier = deck.lightSince === null ? deck.blocks : [];
  const blocks = addReading(earlier, onSince, reading.at, reading.mass.value);
  const level = findLevel(blocks, division.value);
  const on = { ...deck, level, blocks, lightSince: null };
  if (reading.at - onSince < STEP_ON_MS) return { ...on, verdict: 'stepping-on' };
  if (level === null) return { ...on, verdict: deck.held === null ? 'settling' : 'held' };
  const held = settle(level, reading.at, division, need, deck.held);
  return { ...on, held, verdict: verdictOf(level, held, division, need) };
}

function verdictOf(level: Level, held: Held | null, division: Mass, need: number): DeckVerdict {
  if (held !== null) return departure(level, held) ?? 'held';
  const doubt = doubtOf(level, division, need);
  return doubt === null || doubt === 'unsure' ? 'settling' : doubt;
}

/** The load that an animal leaving would take away, in grams: what was held, or the most seen on the way there. */
function stoodThere(deck: Deck): number {
  return deck.held?.mass.value ?? Math.max(0, ...deck.blocks.map((block) => block.grams));
}
