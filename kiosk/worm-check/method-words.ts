import type { SampleMethodView } from '../../shared/egg-count.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** The slide of a method in words, or that its factor was told. */
export function methodWords(method: SampleMethodView, words: Words, show: Show): string {
  if (method.kind === 'told') return words.wormCheck.eggs.told;
  const { dungGrams, suspensionMl, countedMl } = method;
  return words.wormCheck.eggs.slide(
    show.number(dungGrams, 2),
    show.number(suspensionMl, 1),
    show.number(countedMl, 4),
  );
}
