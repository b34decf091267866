/** English words of the doors of the worm check. */
export const enWormDoors = {
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
};
