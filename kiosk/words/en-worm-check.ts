import { enEggs } from './en-eggs.ts';
import { enReductionTest } from './en-reduction-test.ts';

/** English words of the worm check: its doors, egg counts, and whether a medicine worked. */
export const enWormCheck = {
  door: 'Worm check',
  doors: {
    whom: 'Whom to treat',
    scores: 'Scores',
    eggs: 'Egg counts',
    tests: 'Did it work?',
  },
  notScored: (count: number) => (count === 0 ? 'all scored this week' : `${count} to score`),
  scoresTitle: 'Whom did you look at?',
  countThem: 'count a sample',
  noTest: 'test a medicine',
  testsOpen: (count: number) => (count === 1 ? '1 test runs' : `${count} tests run`),
  testsDue: (count: number) => (count === 1 ? '1 test due' : `${count} tests due`),
  eggs: enEggs,
  test: enReductionTest,
};
