import { DIGIT_WORDS, READ_BACK, TEEN_WORDS, TENS_WORDS } from './read-back.ts';

/** Where a read-back may stand: before its number, after some digits, at its point, after some decimals, at its end. */
type Place = 'number' | 'one' | 'two' | 'three' | 'point' | 'tenth' | 'hundredth' | 'end';

const LAST = [[READ_BACK.last], 'end'] as const;
const POINT = [['point'], 'point'] as const;

/** Every number that somebody may say, also those that no dose is read back by: what may follow, and where it leads. */
const NEXT: Readonly<Record<Exclude<Place, 'end'>, readonly (readonly [readonly string[], Place])[]>> = {
  number: [
    [DIGIT_WORDS, 'one'],
    [TENS_WORDS, 'two'],
    [TEEN_WORDS, 'three'],
  ],
  one: [[DIGIT_WORDS, 'two'], POINT, LAST],
  two: [[DIGIT_WORDS, 'three'], POINT, LAST],
  three: [POINT, LAST],
  point: [[DIGIT_WORDS, 'tenth']],
  tenth: [[DIGIT_WORDS, 'hundredth'], LAST],
  hundredth: [LAST],
};

/**
 * A grammar of every read-back but the one told, in JSpeech Grammar Format.
 *
 * Heard again by it, a sound tells how near the next best number is: a digit half hidden by a knock fits two of them.
 * Throws a `RangeError` for words that are no read-back.
 */
export function otherReadBacks(words: readonly string[]): string {
  const choices: string[] = [];
  let place: Place = 'number';
  for (const [at, word] of words.entries()) {
    if (at === 0) continue;
    if (place === 'end') refuse(words);
    for (const [all, to] of NEXT[place]) {
      const others = all.filter((other) => other !== word);
      if (others.length > 0) choices.push([...words.slice(0, at), choice(others, to)].join(' '));
    }
    place = after(place, word) ?? refuse(words);
  }
  if (words[0] !== READ_BACK.first || place !== 'end') refuse(words);
  const rules = Object.entries(NEXT).map(
    ([from, ways]) => `<${from}> = ${ways.map(([all, to]) => choice(all, to)).join(' | ')};`,
  );
  return `#JSGF V1.0;\ngrammar others;\npublic <others> = ${choices.join(' | ')};\n${rules.join('\n')}\n`;
}

function after(place: Exclude<Place, 'end'>, word: string): Place | undefined {
  return NEXT[place].find(([all]) => all.includes(word))?.[1];
}

function refuse(words: readonly string[]): never {
  throw new RangeError(`"${words.join(' ')}" is no read-back`);
}

function choice(words: readonly string[], to: Place): string {
  return `(${words.join(' | ')})${to === 'end' ? '' : ` <${to}>`}`;
}
