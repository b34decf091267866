import { OTHER_ACCENTS } from './accents.ts';
import type { MayBeHeard } from './may-be-heard.ts';
import { type Dictionary, guessPronunciation } from './pronounce.ts';
import { DIGIT_WORDS, READ_BACK, TEEN_WORDS, TENS_WORDS } from './read-back.ts';

/** What a decoder is told: a grammar, how its words sound, and which of them were guessed. */
export interface Grammar {
  /** JSpeech Grammar Format 1.0. */
  readonly jsgf: string;
  /** Every word of the grammar with its pronunciations in ARPABET. */
  readonly pronunciations: ReadonlyMap<string, readonly string[]>;
  /** Words that no dictionary holds: their sound is guessed from their spelling, so they may not be understood. */
  readonly guessed: readonly string[];
  /** Phrases left out because a word of theirs can be neither looked up nor guessed. */
  readonly unsayable: readonly string[];
}

const GIVEN_WORDS = [READ_BACK.first, READ_BACK.last, 'point', ...DIGIT_WORDS, ...TEEN_WORDS, ...TENS_WORDS];

/** The grammar of what may be heard, in words of the dictionary; nothing at all where there is no phrase. */
export function grammarOf(may: MayBeHeard, dictionary: Dictionary): Grammar {
  const words = new Set(may.phrases.flatMap((phrase) => phrase.words));
  if (may.given !== null) for (const word of GIVEN_WORDS) words.add(word);
  if (words.has('zero')) words.add('oh');
  const { pronunciations, guessed } = pronounced(words, dictionary);
  const choices = may.given === null ? [] : ['<given>'];
  const unsayable: string[] = [];
  for (const phrase of may.phrases) {
    if (phrase.words.every((word) => pronunciations.has(word))) choices.push(written(phrase.words));
    else unsayable.push(phrase.words.join(' '));
  }
  const rules = [
    '#JSGF V1.0;',
    'grammar heard;',
    `public <heard> = ${choices.length > 0 ? choices.join(' | ') : '<VOID>'};`,
    ...(may.given === null ? [] : givenRules(may.given.decimals)),
  ];
  return { jsgf: `${rules.join('\n')}\n`, pronunciations, guessed, unsayable };
}

const ZERO = '(zero | oh)';

function written(words: readonly string[]): string {
  return words.map((word) => (word === 'zero' ? ZERO : word)).join(' ');
}

/** Any volume below 100 mL, whatever the dose on the screen; and what is no read-back but would else be taken for one. */
function givenRules(decimals: 1 | 2): string[] {
  const ones = DIGIT_WORDS.slice(1).join(' | ');
  return [
    `<given> = ${READ_BACK.first} (<whole> [point <digit>${decimals === 2 ? ' [<digit>]' : ''}] | <undone>) ${READ_BACK.last};`,
    `<ones> = ${ones};`,
    '<digit> = zero | <ones>;',
    '<whole> = zero | <ones> [<digit>];',
    `<undone> = ${TEEN_WORDS.join(' | ')} | (${TENS_WORDS.join(' | ')}) [<ones>];`,
  ];
}

/** How a word may sound: as the dictionary says first, then in other accents; nothing where it has no such word. */
function soundsOf(word: string, dictionary: Dictionary): readonly string[] {
  const known = dictionary(word);
  return known.length === 0 ? known : [...new Set([...known, ...(OTHER_ACCENTS[word] ?? [])])];
}

function pronounced(
  words: ReadonlySet<string>,
  dictionary: Dictionary,
): Pick<Grammar, 'pronunciations' | 'guessed'> {
  const pronunciations = new Map<string, readonly string[]>();
  const guessed: string[] = [];
  for (const word of words) {
    const known = soundsOf(word, dictionary);
    const guess = known.length > 0 ? null : guessPronunciation(word);
    if (guess !== null) guessed.push(word);
    const sounds = guess === null ? known : [guess];
    if (sounds.length > 0) pronunciations.set(word, sounds);
  }
  return { pronunciations, guessed };
}
