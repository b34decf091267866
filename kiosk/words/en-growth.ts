import type { WeighingView } from '../../shared/animal-page.ts';

/** English words of the growth of an animal and its weights. */
export const enGrowth = {
  chart: 'Weights over time',
  earlier: 'Earlier',
  later: 'Later',
  key: 'Touch a point. Flag: dosed, digit: eyelid',
  keyExpected: (name: string, source: string) => `Grey: ${name.toLowerCase()}, ${source}`,
  scored: 'scored',
  toLookAt: (count: number) => (count === 1 ? '1 weight doubted' : `${count} weights doubted`),
  saidTrue: 'confirmed',
  isTrue: 'It is right',
  isWrong: 'Hold: it is wrong',
  feedDoor: 'Off feed before it',
  notNoted: 'not noted',
  hours: (hours: string) => `${hours} hours`,
  offFeed: (hours: string) => `${hours} hours off feed`,
  askFeed: 'Hours off feed before it',
  atMost: (hours: string) => `At most ${hours} hours`,
  thisWeight: 'This weight only',
  roundEmpty: 'All weighed from now on, too',
  roundFed: 'All from now on are fed',
  unlike: 'some off feed: not alike',
  method: {
    scale: 'weighed',
    girth: 'by the tape',
    guess: 'a guess',
    imported: 'from a file',
  } satisfies Record<WeighingView['method'], string>,
  doubt: {
    'outside-species': 'no animal of its kind weighs that',
    'pounds-for-kilograms': 'pounds read as kilograms?',
    'far-from-last': 'far from the weight before',
    'said-wrong': 'marked as wrong: it counts no more',
  } satisfies Record<NonNullable<WeighingView['doubt']>, string>,
};
