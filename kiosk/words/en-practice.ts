/** English for the practice round. */
export const enPractice = {
  door: 'Practice round',
  offer: 'It takes a minute, on simulated scales. Nothing of it is kept. Later it is at Shed, People.',
  begin: 'Practise',
  sign: 'PRACTICE',
  kept: 'Nothing kept',
  end: 'Hold: end',
  onlyRound: 'Only the round is practised here: that door stays shut.',
  say: {
    take: 'Tap the bottle that would be in your hand.',
    prove: 'Compare number and date, then say that it is the one.',
    wait: 'A goat is led on: watch the weight settle.',
    who: 'Tap the animal that stands there.',
    caution: 'Read it. Hold to accept it, or skip the animal.',
    give: 'Draw up to the mark, give it, then hold Given.',
    logged: 'Logged. Undo stands here for a minute. Tap Next.',
    done: 'That is a round. Hold End, or go on.',
  },
};
