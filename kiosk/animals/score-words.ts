import type { ScoredView } from '../../shared/herd-intents.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';
import type { Sign } from './scoring.ts';

/** What one sign was scored, with the word for it: "4 pink-white"; halves of body condition have no word. */
export function stepWords(sign: Sign, value: ScoredView[Sign], words: Words, show: Show): string {
  if (value === null) return '';
  if (typeof value === 'string') {
    return sign === 'jaw'
      ? words.animals.jaw[value as 'none' | 'swollen']
      : words.animals.coat[value as 'smooth' | 'rough'];
  }
  const named = { eyelid: words.animals.eyelid, body: words.animals.body, soiling: words.animals.soiling };
  const word = sign in named ? named[sign as keyof typeof named][value] : undefined;
  return [show.number(value, 1), word ?? ''].filter(Boolean).join(' ');
}

/** All that was scored at one look, in one short line. */
export function scoreWords(scored: ScoredView, words: Words, show: Show): string {
  const signs: readonly Sign[] = ['eyelid', 'body', 'soiling', 'jaw', 'coat'];
  const short = (sign: Sign): string => {
    const value = scored[sign];
    return typeof value === 'number'
      ? show.number(value, 1)
      : stepWords(sign, value, words, show).toLowerCase();
  };
  return signs
    .filter((sign) => scored[sign] !== null)
    .map((sign) => `${words.animals.signs[sign].toLowerCase()} ${short(sign)}`)
    .join(', ');
}
