import type { CautionStrength } from '../dosing/cautions.ts';
import type { SpokenLanguage } from './language.ts';
import { sayEn } from './say-en.ts';
import { sayEs } from './say-es.ts';
import type { SayWords } from './say-words.ts';
import type { Saying, What } from './saying.ts';

/** How much it matters: urgent cuts off whatever is being said; an aside waits longest and is dropped first. */
export const PRIORITIES = ['aside', 'plain', 'important', 'urgent'] as const;
/** One of {@link PRIORITIES}. */
export type Priority = (typeof PRIORITIES)[number];

/** What a saying is about: a newer one with the same key takes the place of an older one, even mid-word. */
export type SayKey =
  | 'animal'
  | 'weight'
  | 'dose'
  | 'agitate'
  | 'caution'
  | 'note'
  | 'jug'
  | 'log'
  | 'clear-milk'
  | 'clear-meat'
  | 'deck'
  | 'unanswered'
  | 'pour'
  | 'link-platform'
  | 'link-bench'
  | 'link-wand'
  | 'tag'
  | 'answer'
  | 'try-out';

/** One thing to be said aloud. */
export interface Utterance {
  readonly what: What;
  readonly text: string;
  readonly language: SpokenLanguage;
  readonly priority: Priority;
  readonly key: SayKey;
}

const WORDS: Readonly<Record<SpokenLanguage, SayWords>> = { en: sayEn, es: sayEs };
const OF_CAUTION: Readonly<Record<CautionStrength, Priority>> = {
  stop: 'urgent',
  ask: 'important',
  note: 'aside',
};

/** Puts a saying into the words of a language. */
export function utter(saying: Saying, language: SpokenLanguage): Utterance {
  const words = WORDS[language][saying.what] as (saying: Saying) => string;
  return { what: saying.what, text: words(saying), language, ...mannerOf(saying) };
}

function mannerOf(saying: Saying): Pick<Utterance, 'priority' | 'key'> {
  switch (saying.what) {
    case 'animal':
    case 'who':
    case 'which-animal':
      return { priority: 'plain', key: 'animal' };
    case 'called':
      return { priority: 'important', key: 'animal' };
    case 'weight':
      return { priority: 'plain', key: 'weight' };
    case 'dose':
      return { priority: 'important', key: 'dose' };
    case 'agitate':
      return { priority: 'aside', key: 'agitate' };
    case 'caution':
      return {
        priority: OF_CAUTION[saying.strength],
        key: saying.strength === 'note' ? 'note' : 'caution',
      };
    case 'jug-in-hand':
      return { priority: 'plain', key: 'jug' };
    case 'logged':
    case 'undone':
      return { priority: 'important', key: 'log' };
    case 'skipped':
      return { priority: 'plain', key: 'log' };
    case 'clear':
      return { priority: 'plain', key: saying.of === 'milk' ? 'clear-milk' : 'clear-meat' };
    case 'unanswered':
      return { priority: 'important', key: 'unanswered' };
    case 'deck':
      return { priority: 'plain', key: 'deck' };
    case 'pour':
      return { priority: saying.call === 'slow' ? 'important' : 'urgent', key: 'pour' };
    case 'powder':
      return { priority: 'important', key: 'pour' };
    case 'link':
      return { priority: saying.now === 'back' ? 'aside' : 'urgent', key: `link-${saying.role}` };
    case 'tag-unknown':
      return { priority: 'plain', key: 'tag' };
    case 'refused':
    case 'wrong-number':
    case 'not-done':
      return { priority: 'important', key: 'answer' };
    case 'not-understood':
      return { priority: 'plain', key: 'answer' };
    case 'try-out':
      return { priority: 'plain', key: 'try-out' };
  }
}
