import { type HerdAnimal, isPresent } from './herd-animal.ts';

/** A number that more than one animal on the farm carries. */
export interface SharedNumber {
  readonly number: string;
  readonly kind: 'electronic' | 'visual' | 'name';
  readonly animalIds: readonly string[];
}

/** A number as it is compared: capitals and blanks do not tell two tags apart. */
export function sameNumber(number: string): string {
  return number.normalize('NFKC').replace(/\s+/g, '').toUpperCase();
}

/**
 * All numbers and names that two or more animals on the farm carry: each must be settled at the animal. A visual tag is
 * also held against names, since many are called by the number they wear.
 */
export function sharedNumbers(animals: readonly HerdAnimal[]): SharedNumber[] {
  const here = animals.filter(isPresent);
  return [
    ...shared(here, 'electronic', ({ tag }) => (tag === null ? [] : [tag])),
    ...shared(here, 'visual', ({ visualTags, name }) => [...visualTags, name]).filter(({ number }) =>
      here.some(({ visualTags }) => visualTags.some((tag) => sameNumber(tag) === sameNumber(number))),
    ),
    ...shared(here, 'name', ({ name }) => [name]),
  ];
}

function shared(
  animals: readonly HerdAnimal[],
  kind: SharedNumber['kind'],
  numbersOf: (animal: HerdAnimal) => readonly string[],
): SharedNumber[] {
  const wearers = new Map<string, { number: string; ids: Set<string> }>();
  for (const animal of animals) {
    for (const number of numbersOf(animal)) {
      const known = wearers.get(sameNumber(number)) ?? { number, ids: new Set() };
      wearers.set(sameNumber(number), { ...known, ids: known.ids.add(animal.id) });
    }
  }
  return [...wearers.values()]
    .filter(({ ids }) => ids.size > 1)
    .map(({ number, ids }) => ({ number, kind, animalIds: [...ids] }));
}
