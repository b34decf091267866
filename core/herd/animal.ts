import type { Mass } from '../quantity/mass.ts';

/** The species the kiosk knows. */
export type Species = 'goat' | 'sheep' | 'cattle';

/** What an animal is on the farm: sex, and whether it is grown. */
export type AnimalClass = 'female' | 'male' | 'castrate' | 'young';

/** One animal of the herd. */
export interface Animal {
  readonly id: string;
  /** What the keeper calls it: a name or the number of its visual tag. */
  readonly name: string;
  readonly species: Species;
  readonly class: AnimalClass;
  /** Its electronic tag, 15 digits; `null` where it wears none. */
  readonly tag: string | null;
  /** Whether its milk is taken for people now. */
  readonly inMilk: boolean;
  /** Milliseconds since 1970 of the day it was born; `null` where not known. */
  readonly bornAtMs: number | null;
  /** Milliseconds since 1970 of the day it was bred; `null` where not known to be bred. */
  readonly bredAtMs: number | null;
  /** Milliseconds since 1970 of the day the males were taken away from it; `null` where not known. */
  readonly malesRemovedAtMs: number | null;
  /** Its last weight and when (milliseconds since 1970); `null` where never weighed. */
  readonly lastWeight: { readonly mass: Mass; readonly atMs: number } | null;
}

/** The animals a weight fits best, nearest last weight first; those never weighed come last. */
export function likeliest(animals: readonly Animal[], weight: Mass): Animal[] {
  const unlike = (animal: Animal): number =>
    animal.lastWeight === null || animal.lastWeight.mass.value <= 0 || weight.value <= 0
      ? Number.POSITIVE_INFINITY
      : Math.abs(Math.log(weight.value / animal.lastWeight.mass.value));
  return [...animals].sort((a, b) => {
    const [first, second] = [unlike(a), unlike(b)];
    return first === second ? a.name.localeCompare(b.name) : first - second;
  });
}
