import { describe, expect, test } from 'vitest';
import { estimate } from '../../bench/deck/estimator.ts';
import { GRADES, TUNING } from '../../bench/deck/parameters.ts';
import { errorPercent, scoreOf, stoodFree } from '../../bench/deck/score.ts';
import { makeVisit } from '../../bench/deck/visit.ts';

/** Seeds of their own: neither those the estimator was tuned on nor those the bench reports. */
const FIRST_SEED = 900_001;
const VISITS = 90;

describe.each(GRADES)('over many step-ons of %s animals that move as the bench has them move', (grade) => {
  const trials = Array.from({ length: VISITS }, (_, i) => {
    const visit = makeVisit(TUNING, grade, FIRST_SEED + i);
    return { visit, ...estimate(visit) };
  });
  const outcomes = trials.map(({ visit, first }) => ({
    visit,
    taken: first === null ? null : { grams: first.mass.value, at: first.at },
  }));
  const score = scoreOf(outcomes);

  test('most holds are right, and those of animals that stood free for a while nearly all', () => {
    expect(score.falseHolds).toBeLessThan(0.06);
    const wrong = outcomes.filter(
      ({ visit, taken }) =>
        taken !== null && Math.abs(errorPercent(visit, taken.grams)) > 2 && stoodFree(visit, taken.at),
    );
    expect(wrong.length).toBeLessThanOrEqual(0.035 * VISITS);
  });

  test('as many are held as such an animal lets itself be weighed', () => {
    const least = { calm: 0.9, restless: 0.7, violent: 0.15 }[grade];
    expect(score.heldOfStanding).toBeGreaterThan(least);
  });

  test('two uncertainties cover most errors', () => {
    const held = trials.flatMap(({ visit, first, uncertainty }) =>
      first === null ? [] : [Math.abs(first.mass.value - visit.truth) / uncertainty],
    );
    const covered = held.filter((errors) => errors <= 2).length / held.length;
    expect(covered).toBeGreaterThan(0.75);
  });
});
