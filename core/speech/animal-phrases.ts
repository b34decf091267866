import { sameNumber } from '../herd/numbers.ts';
import type { Phrase } from './command.ts';
import { digitByDigit, pairWords } from './read-back.ts';

/** What of an animal it may be called by. */
export interface Callable {
  readonly id: string;
  readonly name: string;
  /** 15 digits, or `null`. */
  readonly tag: string | null;
  readonly visualTags: readonly string[];
}

/** A number or name that cannot be said, and why: it is shown, never dropped in silence. */
export interface LeftOut {
  readonly what: string;
  readonly why: 'shared' | 'not-2-to-4-digits' | 'not-plain-letters';
}

/** How animals may be called, and which of their numbers and names may not. */
export interface AnimalPhrases {
  readonly phrases: readonly Phrase[];
  readonly leftOut: readonly LeftOut[];
}

/** How much of an electronic tag's end stands for it where an animal wears no visual tag. */
const TAG_END = 4;

/**
 * "tag four one seven", or "tag four seventeen", and "animal thistle" for the animals given.
 *
 * A number of two to four digits that one animal alone carries; an animal without such a visual tag may be called by
 * the last four of its electronic one. The last two digits are said as a pair only where no tag differs from it
 * by teen and ty, as 415 and 450 do: a barn does not tell "fifteen" from "fifty".
 */
export function animalPhrases(animals: readonly Callable[]): AnimalPhrases {
  const leftOut: LeftOut[] = [];
  const numbers = onlyOnes(animals, numbersOf, leftOut);
  const names = onlyOnes(animals, ({ name }) => (/^\d+$/.test(name) ? [] : [name]), leftOut);
  const known = new Set(numbers.map(([number]) => number));
  const phrases: Phrase[] = [];
  for (const [number, animalId] of numbers) {
    if (!/^\d{2,4}$/.test(number)) {
      leftOut.push({ what: number, why: 'not-2-to-4-digits' });
      continue;
    }
    for (const words of waysToSay(number, known)) {
      phrases.push({ words: ['tag', ...words], command: { kind: 'animal', animalId } });
    }
  }
  for (const [name, animalId] of names) {
    const words = name.toLowerCase().split(/\s+/);
    if (words.every((word) => /^[a-z]+('[a-z]+)?$/.test(word))) {
      phrases.push({ words: ['animal', ...words], command: { kind: 'animal', animalId } });
    } else {
      leftOut.push({ what: name, why: 'not-plain-letters' });
    }
  }
  return { phrases, leftOut };
}

function numbersOf({ name, tag, visualTags }: Callable): string[] {
  const visual = [...visualTags, ...(/^\d+$/.test(name) ? [name] : [])];
  if (visual.some((number) => /^\d{2,4}$/.test(number)) || tag === null) return visual;
  return [...visual, tag.slice(-TAG_END)];
}

/** Each number or name with the one animal that carries it; those that more than one carries are left out. */
function onlyOnes(
  animals: readonly Callable[],
  of: (animal: Callable) => readonly string[],
  leftOut: LeftOut[],
): [string, string][] {
  const carriers = new Map<string, { written: string; ids: Set<string> }>();
  for (const animal of animals) {
    for (const written of of(animal)) {
      const known = carriers.get(sameNumber(written)) ?? { written, ids: new Set<string>() };
      known.ids.add(animal.id);
      carriers.set(sameNumber(written), known);
    }
  }
  const alone: [string, string][] = [];
  for (const { written, ids } of carriers.values()) {
    const [only] = ids;
    if (ids.size === 1 && only !== undefined) alone.push([written, only]);
    else leftOut.push({ what: written, why: 'shared' });
  }
  return alone;
}

function waysToSay(number: string, known: ReadonlySet<string>): string[][] {
  const single = digitByDigit(number);
  const pair = pairWords(number.slice(-2));
  if (pair === null || hasTwin(number, known)) return [single];
  return [single, [...digitByDigit(number.slice(0, -2)), ...pair]];
}

/** Whether a tag of the herd differs from this one only as "fifteen" does from "fifty". */
function hasTwin(number: string, known: ReadonlySet<string>): boolean {
  const [head, tens = '', ones = ''] = [number.slice(0, -2), number.at(-2), number.at(-1)];
  if (tens === '1' && Number(ones) >= 3) return known.has(`${head}${ones}0`);
  if (ones === '0' && Number(tens) >= 3) return known.has(`${head}1${tens}`);
  return false;
}
