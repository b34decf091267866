import { DAY_MS } from '../moment.ts';
import { type Quantity, quantity } from '../quantity/quantity.ts';
import type { Interval } from '../statistics/interval.ts';
import { type TheilSen, theilSen } from '../statistics/theil-sen.ts';
import type { JudgedWeighing, Weighing } from './weighing.ts';

/** Growth in grams a day; below zero for a loss. */
export type DailyGain = Quantity<'g/d'>;

/** Grams a day between two weighings; `null` where less than a day lies between them. */
export function gainBetween(first: Weighing, last: Weighing): DailyGain | null {
  const days = (last.atMs - first.atMs) / DAY_MS;
  return days >= 1 ? quantity('g/d', (last.mass.value - first.mass.value) / days) : null;
}

/** Which way a weight goes, as far as its limits tell. */
export type Direction = 'gaining' | 'losing' | 'not-clear';

/** How an animal grows over its history. */
export interface Trend {
  readonly gain: DailyGain;
  /** 95 % limits in grams a day. */
  readonly limits: Interval;
  readonly direction: Direction;
  /** Weights it stands on, and those left aside as doubted. */
  readonly used: number;
  readonly doubted: number;
  /** Whether weights full and weights off feed are mixed in it. */
  readonly unlikeFeed: boolean;
}

/** Fewer weights have a slope but no limits, so nothing is said of a trend. */
const FEWEST = 3;
/** Hours off feed by which two weights may differ and still be held against each other (the kiosk's own guard). */
const LIKE_FEED_HOURS = 4;

/**
 * The trend of an animal's weights, by Theil and Sen's slope, which a few bad weights do not bend.
 *
 * Doubted weights are left aside and counted. `null` for fewer than 3 weights or all on one day.
 */
export function trendOf(judged: readonly JudgedWeighing[]): Trend | null {
  const believed = judged.filter(({ doubt }) => doubt === null).map(({ weighing }) => weighing);
  if (believed.length < FEWEST) return null;
  const start = Math.min(...believed.map(({ atMs }) => atMs));
  const line: TheilSen | null = theilSen(
    believed.map(({ atMs }) => (atMs - start) / DAY_MS),
    believed.map(({ mass }) => mass.value),
  );
  if (line === null || line.limits === null) return null;
  return {
    gain: quantity('g/d', line.slope),
    limits: line.limits,
    direction: directionOf(line.limits),
    used: believed.length,
    doubted: judged.length - believed.length,
    unlikeFeed: isUnlikeFeed(believed),
  };
}

function directionOf({ lower, upper }: Interval): Direction {
  if (lower > 0) return 'gaining';
  return upper < 0 ? 'losing' : 'not-clear';
}

function isUnlikeFeed(weighings: readonly Weighing[]): boolean {
  const hours = weighings.flatMap(({ hoursOffFeed }) => hoursOffFeed ?? []);
  return hours.length > 1 && Math.max(...hours) - Math.min(...hours) > LIKE_FEED_HOURS;
}
