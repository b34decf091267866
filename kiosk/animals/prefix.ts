import { sameNumber } from '../../core/herd/numbers.ts';
import type { AnimalView } from '../../shared/animal.ts';

/** What an animal can be found by, each in the form it is compared in. */
function numbersOf({ name, visualTags }: Pick<AnimalView, 'name' | 'visualTags'>): string[] {
  return [name, ...visualTags].map(sameNumber);
}

/** The animals whose name or visual tag begins so, in the order given. */
export function beginningWith<A extends Pick<AnimalView, 'name' | 'visualTags'>>(
  animals: readonly A[],
  prefix: string,
): A[] {
  const wanted = sameNumber(prefix);
  return animals.filter((animal) => numbersOf(animal).some((number) => number.startsWith(wanted)));
}

/** The characters that lead on from a prefix to at least one animal, in order. */
export function nextCharacters(
  animals: readonly Pick<AnimalView, 'name' | 'visualTags'>[],
  prefix: string,
): string[] {
  const wanted = sameNumber(prefix);
  const next = new Set<string>();
  for (const number of animals.flatMap(numbersOf)) {
    if (!number.startsWith(wanted)) continue;
    const [character] = [...number.slice(wanted.length)];
    if (character !== undefined) next.add(character);
  }
  return [...next].sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
}
