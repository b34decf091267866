import type { DeckVisit } from './visit.ts';

/** A visit without its readings: what is left to keep once every method has seen them. */
export type PastVisit = Omit<DeckVisit, 'samples'>;

/** What a method made of one visit: its first hold, if any. */
export interface Outcome {
  readonly visit: PastVisit;
  readonly taken: { readonly grams: number; readonly at: number } | null;
}

/** How a method did over many visits. Errors are of the first hold, in per cent of the true weight. */
export interface Score {
  readonly visits: number;
  readonly meanError: number;
  readonly p95Error: number;
  readonly maxError: number;
  readonly bias: number;
  /** Half of those held were held within this many seconds of the last foot landing. */
  readonly medianSeconds: number;
  /** Half of all animals that stood long enough were held by then; endless where fewer than half ever were. */
  readonly halfHeldBy: number;
  /** The share of visits held more than 2 % off. */
  readonly falseHolds: number;
  /** The part of it where the animal had not once stood free for long enough to tell. */
  readonly hiddenFalse: number;
  /** The share held, of the animals that stood 5 s or more. */
  readonly heldOfStanding: number;
  /** The share of all visits without a hold. */
  readonly refused: number;
}

/** Further off than this, in per cent, a hold is a false one. */
export const FALSE_PERCENT = 2;
/** An animal that stands this long, in seconds, ought to be held. */
export const STANDING_SECONDS = 5;

/** How far a hold lies from the truth, in per cent of it; above zero when it is too heavy. */
export function errorPercent(visit: PastVisit, grams: number): number {
  return (100 * (grams - visit.truth)) / visit.truth;
}

/** Scores the outcomes of one method; shares are between 0 and 1, and NaN where nothing was there to count. */
export function scoreOf(outcomes: readonly Outcome[]): Score {
  const holds = outcomes.flatMap(({ visit, taken }) => (taken === null ? [] : [{ visit, taken }]));
  const signed = holds.map(({ visit, taken }) => errorPercent(visit, taken.grams));
  const errors = signed.map(Math.abs).sort(ascending);
  const seconds = holds.map(({ visit, taken }) => (taken.at - visit.lastFootOn) / 1000).sort((a, b) => a - b);
  const falseOnes = holds.filter(
    ({ visit, taken }) => Math.abs(errorPercent(visit, taken.grams)) > FALSE_PERCENT,
  );
  const standing = outcomes.filter(({ visit }) => visit.stands >= STANDING_SECONDS);
  return {
    visits: outcomes.length,
    meanError: average(errors),
    p95Error: quantile(errors, 0.95),
    maxError: errors.at(-1) ?? Number.NaN,
    bias: average(signed),
    medianSeconds: quantile(seconds, 0.5),
    halfHeldBy: quantile(
      standing
        .map(({ visit, taken }) => (taken === null ? Infinity : secondsTo(visit, taken.at)))
        .sort(ascending),
      0.5,
    ),
    falseHolds: falseOnes.length / outcomes.length,
    hiddenFalse: falseOnes.filter(({ visit, taken }) => !stoodFree(visit, taken.at)).length / outcomes.length,
    heldOfStanding: standing.filter(({ taken }) => taken !== null).length / standing.length,
    refused: 1 - holds.length / outcomes.length,
  };
}

/** How long after the last foot landed something was, in seconds. */
export function secondsTo(visit: PastVisit, at: number): number {
  return (at - visit.lastFootOn) / 1000;
}

/** This long free of hands, gates, lifted feet and company shows a weight, in seconds. */
const FREE_SECONDS = 0.7;

/** Whether an animal stood on all its feet and free of everything for a while before a moment in milliseconds. */
export function stoodFree(visit: PastVisit, at: number): boolean {
  const spells = visit.spells
    .filter(({ until }) => 1000 * until > visit.lastFootOn)
    .sort((a, b) => a.from - b.from);
  let free = visit.lastFootOn / 1000;
  for (const spell of spells) {
    if (Math.min(spell.from, at / 1000) - free >= FREE_SECONDS) return true;
    free = Math.max(free, spell.until);
  }
  return at / 1000 - free >= FREE_SECONDS;
}

function ascending(a: number, b: number): number {
  return a - b;
}

function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The value below which a share of sorted values lies (nearest rank). */
export function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}
