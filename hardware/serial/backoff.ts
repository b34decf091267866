const FIRST_MS = 100;
const CAP_MS = 1000;

/**
 * How long to wait before the next try to open, in milliseconds: 100, doubling to 1,000, give or take a quarter.
 *
 * `attempt` counts the failed tries so far from 0; `random` gives 0 (included) to 1 (excluded). Never over 1,250.
 */
export function retryDelayMs(attempt: number, random: () => number): number {
  const base = Math.min(CAP_MS, FIRST_MS * 2 ** Math.min(attempt, 10));
  // Two links that share one hub must not knock at the same moment for ever.
  return base * (0.75 + 0.5 * random());
}
