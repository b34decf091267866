import { seeded } from '../../core/make/animal-signal.ts';

/** Bounds of what is drawn: the low and the high end. */
export type Range = readonly [low: number, high: number];

/** Repeatable random draws: the same seed gives the same row of them. */
export interface Draws {
  /** Evenly within the bounds. */
  within(range: Range): number;
  /** Evenly in the logarithm within the bounds, both above zero. */
  logWithin(range: Range): number;
  /** From the normal distribution with mean 0 and standard deviation 1. */
  normal(): number;
  /** True with this chance. */
  chance(share: number): boolean;
  /** A waiting time in seconds between events that come at random at this many a second; endless at none. */
  waiting(perSecond: number): number;
  /** One of the values, each as likely. */
  oneOf<Value>(values: readonly [Value, ...Value[]]): Value;
}

/** Makes the draws of a seed, any integer. */
export function createDraws(seed: number): Draws {
  const random = seeded(seed);
  const within = ([low, high]: Range): number => low + random() * (high - low);
  return {
    within,
    logWithin: ([low, high]) => Math.exp(within([Math.log(low), Math.log(high)])),
    normal: () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random()),
    chance: (share) => random() < share,
    waiting: (perSecond) => (perSecond > 0 ? -Math.log(1 - random()) / perSecond : Number.POSITIVE_INFINITY),
    oneOf: (values) => values[Math.floor(random() * values.length)] ?? values[0],
  };
}
