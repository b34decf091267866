import { enWhole } from '../../../kiosk/words/en-whole.ts';
import { LANGUAGES } from '../../../kiosk/words/languages.ts';
import { pseudoWords, UNSEEN_MARKS } from '../preview/pseudo-words.ts';

const PSEUDO = pseudoWords(enWhole, UNSEEN_MARKS);

/** Puts the catalogue of longer words in Spanish's place, or takes it out again. */
export function speakPseudo(wanted: boolean): void {
  for (const each of [LANGUAGES.es.first, LANGUAGES.es.whole]) {
    if (wanted) {
      Object.defineProperty(each, 'get', { value: async () => PSEUDO, configurable: true });
      Object.defineProperty(each, 'part', { value: PSEUDO, configurable: true });
    } else {
      Reflect.deleteProperty(each, 'get');
      Reflect.deleteProperty(each, 'part');
    }
  }
}
