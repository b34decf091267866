import type { KeepingView } from '../../shared/keeping.ts';
import type { Fact } from '../parts/fact.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** Where the copies of the records are, and how the card is, a line each. */
export function copyFacts({ backup, checkedAt }: KeepingView, words: Words, show: Show): Fact[] {
  const { last, places } = backup;
  return [
    {
      what: words.keeping.last,
      said: last === null ? words.keeping.never : `${show.when(last.at)}, ${words.keeping.on(last.place)}`,
      testid: 'keeping-last',
    },
    {
      what: words.keeping.to,
      said: places.length === 0 ? words.keeping.nowhere : places.join(', '),
      testid: 'keeping-to',
    },
    {
      what: words.keeping.checked,
      said: checkedAt === null ? words.keeping.unchecked : show.when(checkedAt),
    },
  ];
}
