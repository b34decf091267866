import type { Command, Phrase } from './command.ts';
import type { MayBeHeard } from './may-be-heard.ts';
import { READ_BACK } from './read-back.ts';
import { WAKE_WORDS } from './wake.ts';

/** What kind of phrase an example is of. */
export type PhraseGroup =
  | 'wake'
  | 'given'
  | 'happened'
  | 'animal'
  | 'jug'
  | 'score'
  | 'skip'
  | 'next'
  | 'undo'
  | 'screen'
  | 'say-again';

/** A phrase as it is to be said, or what many of them have in common with an ellipsis for the rest. */
export interface Example {
  readonly group: PhraseGroup;
  readonly say: string;
}

const GROUPS: Readonly<Record<Command['kind'], PhraseGroup>> = {
  wake: 'wake',
  given: 'given',
  'not-given': 'happened',
  animal: 'animal',
  'take-jug': 'jug',
  'jug-on-bench': 'jug',
  score: 'score',
  skip: 'skip',
  next: 'next',
  undo: 'undo',
  screen: 'screen',
  'say-again': 'say-again',
};

/** In the order of what matters most where they may be said. */
const ORDER = [...new Set(Object.values(GROUPS))];

/**
 * What may be said now, short enough for a sheet: each phrase, but of phrases that differ in a number or name alone
 * only the words before it, as "tag …".
 */
export function examplesOf(may: MayBeHeard): Example[] {
  const given: Example[] =
    may.given === null ? [] : [{ group: 'given', say: `${READ_BACK.first} … ${READ_BACK.last}` }];
  const said = new Map(may.phrases.map((phrase) => [exampleOf(phrase), GROUPS[phrase.command.kind]]));
  const examples = [...given, ...[...said].map(([say, group]) => ({ group, say }))];
  return examples.sort((a, b) => ORDER.indexOf(a.group) - ORDER.indexOf(b.group));
}

function exampleOf({ words, command }: Phrase): string {
  switch (command.kind) {
    case 'animal':
      return `${words[0]} …`;
    case 'wake':
      return command.also === null ? words.join(' ') : `${WAKE_WORDS.join(' ')} …`;
    case 'score':
      return 'step' in command.score && typeof command.score.step === 'number'
        ? `${words.slice(0, 2).join(' ')} …`
        : words.join(' ');
    default:
      return words.join(' ');
  }
}
