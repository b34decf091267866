/** English for saying what really happened to a dose. */
export const enCorrecting = {
  title: 'What really happened?',
  notGiven: 'Not given',
  wrongAnimal: 'Wrong animal',
  wrongVolume: 'Other volume',
  which: 'Which animal swallowed it?',
  volume: 'How much went in?',
  confirm: (what: string) => `Hold: ${what}`,
  stands: 'The first entry stays; this one stands beside it.',
};
