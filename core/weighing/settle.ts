import { grams, type Mass } from '../quantity/mass.ts';
import { quietAfterRise, restAfterRise, restBeforeLongRise } from './arrival.ts';
import type { Level } from './level.ts';
import { scaleUncertainty } from './reading.ts';

/** A weight that was held: the estimate, its standard uncertainty (k = 1) and when. */
export interface Held {
  readonly mass: Mass;
  readonly uncertainty: Mass;
  /** Uptime in milliseconds. */
  readonly at: number;
  /** The weight held just before in the same visit, when this one clearly differs from it. */
  readonly changedFrom: Mass | null;
}

/** How well a weight must be known where nothing finer is asked for: standard uncertainty as a share of it. */
export const USUAL_NEED = 0.006;

/**
 * In the first seconds no less is good enough than this share, however coarse the dose: an animal that leaned from the
 * start gives itself away only later, and it sways as it leans. From then on the need is let in, up to the second time,
 * both in seconds of standing. Tuned on the bench's tuning set, as are the figures below.
 */
const FIRST_NEED = 0.0033;
const FIRST_SECONDS = 2;
const NEED_SECONDS = 5;

/** The least quiet standing any hold rests on, in seconds. */
const QUIET = 0.45;
/** The least share of the last second spent at the level. */
const PRESENT = 0.4;
/** A load that goes on changing by more than this share of itself a second is not of an animal that stands. */
const GOING_ON = 0.014;
/** How long the load must not have been another, in seconds. */
const SINCE_APART = 1.15;
/** A spell at higher loads longer than this may have been the true weight, in seconds. */
const SPELL_ABOVE = 0.25;
/** Two holds of one visit differ when they are further apart than this share and four uncertainties. */
const CHANGED = 0.03;
/** A change of no more than this share may be a hand or a gate, and is waited out for longer. */
const LEANING = 0.25;
const LEANING_SECONDS = 6;
const CHANGED_SECONDS = 2.5;

/** A doubt of this share of what rounding to the division leaves is small enough, since no waiting takes that away. */
const ROUNDING_ENOUGH = 0.75;

/** Why a level is not, or not yet, a weight to be held. */
export type Doubt = 'unsure' | 'leaning' | 'two-animals';

/**
 * What still speaks against holding a level for the first time in a visit; `null` when nothing does.
 *
 * `need` is the standard uncertainty asked for as a share of the weight. Waiting makes no division finer, so a
 * doubt like the division's own is small enough whatever is asked for.
 */
export function doubtOf(level: Level, division: Mass, need: number): Doubt | null {
  const { past, quiet } = level;
  if (!isKnown(level, division, needAfter(past.stood, need))) return 'unsure';
  if (past.above > 0.1 && quiet < 1 + 6 * past.above) return 'leaning';
  if (past.spellAbove > SPELL_ABOVE && quiet < 1 + 5 * past.spellAbove) return 'leaning';
  if (quiet < QUIET || past.sinceApart < SINCE_APART) return 'unsure';
  if (Math.abs(level.slope) > GOING_ON * level.grams) return 'unsure';
  if (past.sinceApart < restAfterRise(past)) return 'unsure';
  return quiet < quietAfterRise(level) ? 'two-animals' : null;
}

function needAfter(stood: number, need: number): number {
  const letIn = (stood - FIRST_SECONDS) / (NEED_SECONDS - FIRST_SECONDS);
  const first = Math.min(need, FIRST_NEED);
  return first + (need - first) * Math.min(1, Math.max(0, letIn));
}

/**
 * Takes the level into what is held: the first weight once nothing speaks against it, later ones only where they
 * clearly differ and last (one foot was off, a second animal came), and then says what it replaced. So does a first
 * weight that was very long in coming: it names the load that rested there on the way.
 */
export function settle(
  level: Level,
  at: number,
  division: Mass,
  need: number,
  earlier: Held | null,
): Held | null {
  if (earlier === null) {
    if (doubtOf(level, division, need) !== null) return null;
    const rested = restBeforeLongRise(level.past);
    return heldAt(level, at, division, rested === null ? null : grams(rested));
  }
  const apart = Math.abs(level.grams - earlier.mass.value);
  const share = apart / earlier.mass.value;
  const lasting = share <= LEANING ? LEANING_SECONDS : CHANGED_SECONDS;
  const differs = share > CHANGED && apart > 4 * level.uncertainty;
  if (!differs || level.past.sinceApart < lasting || !isKnown(level, division, need)) return earlier;
  return heldAt(level, at, division, earlier.mass);
}

/** How a loaded deck that holds a weight differs from it now: `null` while it does not. */
export function departure(level: Level, held: Held): 'leaning' | 'two-animals' | null {
  const share = level.grams / held.mass.value - 1;
  if (share > LEANING) return 'two-animals';
  return Math.abs(share) > CHANGED && level.present >= PRESENT ? 'leaning' : null;
}

function isKnown(level: Level, division: Mass, need: number): boolean {
  const enough = Math.max(need * level.grams, (ROUNDING_ENOUGH * division.value) / Math.sqrt(12));
  return level.uncertainty <= enough && level.present >= PRESENT;
}

function heldAt(level: Level, at: number, division: Mass, changedFrom: Mass | null): Held {
  // To the milligram, so that the dust of binary sums is neither shown nor logged.
  const mass = grams(Math.round(1000 * level.grams) / 1000);
  const scale = scaleUncertainty(mass, division);
  return { mass, uncertainty: grams(Math.hypot(scale.value, level.uncertainty)), at, changedFrom };
}
