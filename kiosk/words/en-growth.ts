import type { WeighingView } from '../../shared/animal-page.ts';

/** English words of the growth of an animal and its weights. */
export const enGrowth = {
  chart: 'Weights over time',
  earlier: 'Earlier',
  later: 'Later',
  key: 'Touch a point. Flag: dosed, digit: eyelid',
  keyExpected: (name: string, source: string) => `Grey: ${name.toLowerCase()}, ${source}`,
  scored: 'scored',
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
  } satisfies Record<NonNullable<WeighingView['doubt']>, string>,
};
