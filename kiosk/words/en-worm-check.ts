/** English words of the worm check: its doors, egg counts, and whether a medicine worked. */
export const enWormCheck = {
  door: 'Worm check',
  doors: {
    whom: 'Whom to treat',
    scores: 'Scores',
  },
  notScored: (count: number) => (count === 0 ? 'all scored this week' : `${count} to score`),
  scoresTitle: 'Whom did you look at?',
};
