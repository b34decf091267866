import { type HerdAnimal, isPresent } from './herd-animal.ts';

/** Whose an electronic tag is. */
export type TagOwner =
  | { readonly kind: 'wears'; readonly animalId: string }
  /** Recorded of several, as by two kiosks that did not know of each other's: a person must look. */
  | { readonly kind: 'shared'; readonly animalIds: readonly string[] }
  /** Nobody wears it now; these lost it once. It may be found again, or be in another ear: a person must look. */
  | { readonly kind: 'wore'; readonly animalIds: readonly string[] }
  | { readonly kind: 'nobody' };

/**
 * Whose a tag of 15 digits is among all animals; only those on the farm count.
 *
 * A number that came with a merged record is the animal's own, since a person said that both records are one animal.
 */
export function tagOwner(tag: string, animals: readonly HerdAnimal[]): TagOwner {
  const here = animals.filter(isPresent);
  const has = (why: 'lost' | 'merged') => (animal: HerdAnimal) =>
    animal.formerTags.some((former) => former.number === tag && former.why === why);
  const wearing = here.filter((animal) => animal.tag === tag);
  const [wearer, ...more] = wearing.length > 0 ? wearing : here.filter(has('merged'));
  if (wearer !== undefined && more.length > 0)
    return { kind: 'shared', animalIds: [wearer, ...more].map(({ id }) => id) };
  if (wearer !== undefined) return { kind: 'wears', animalId: wearer.id };
  const wore = here.filter(has('lost'));
  return wore.length === 0 ? { kind: 'nobody' } : { kind: 'wore', animalIds: wore.map(({ id }) => id) };
}
