import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';
import type { GrowthEvent } from './growth-events.ts';
import { scoreWords } from './score-words.ts';

/** An event of the chart in words: what it was, and what more is to be said of it. */
export function eventWords(event: GrowthEvent, words: Words, show: Show): { what: string; more: string } {
  const day = show.date(event.atMs);
  switch (event.kind) {
    case 'weight': {
      const { grams, uncertaintyGrams, method, doubt, said, hoursOffFeed } = event.weighing;
      const weight =
        uncertaintyGrams === null
          ? show.weight(grams)
          : words.animals.weightDoubt(show.weight(grams), show.fineWeight(2 * uncertaintyGrams));
      const more = [
        doubt === null ? '' : words.growth.doubt[doubt],
        said === 'true' ? words.growth.saidTrue : '',
        words.growth.method[method],
        hoursOffFeed === null ? '' : words.growth.offFeed(show.number(hoursOffFeed, 1)),
      ];
      return { what: `${day}: ${weight}`, more: more.filter(Boolean).join(', ') };
    }
    case 'dose': {
      const { active, volumeMl, syringeGraduationMl, outcome } = event.treatment;
      return {
        what: `${day}: ${words.shipped(active)}`,
        more: `${show.dose(volumeMl, syringeGraduationMl)}, ${words.platform.outcome[outcome].toLowerCase()}`,
      };
    }
    case 'score':
      return { what: `${day}: ${words.growth.scored}`, more: scoreWords(event.scored, words, show) };
  }
}
