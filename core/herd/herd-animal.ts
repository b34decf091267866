import type { Animal } from './animal.ts';

/** Whether an animal is here, and if not, where it went. Nothing is ever deleted. */
export type Life =
  | { readonly kind: 'present' }
  | { readonly kind: 'sold' | 'died'; readonly atMs: number; readonly by: string }
  /** Its record was one of two of the same animal; the other goes on. */
  | { readonly kind: 'merged'; readonly intoId: string; readonly atMs: number; readonly by: string };

/** A number an animal wore once. */
export interface FormerTag {
  readonly number: string;
  readonly untilMs: number;
  readonly why: 'lost' | 'merged';
}

/** An animal with all that the farm keeps of it. Times are milliseconds since 1970; `null` where not known. */
export interface HerdAnimal extends Animal {
  /** Numbers and letters of its visual tags, as written on them. */
  readonly visualTags: readonly string[];
  readonly formerTags: readonly FormerTag[];
  readonly pen: string | null;
  /** A colour mark on its coat. */
  readonly mark: string | null;
  /** The name of its photo among the kiosk's files. */
  readonly photo: string | null;
  readonly kiddedAtMs: number | null;
  readonly inMilkSinceMs: number | null;
  readonly life: Life;
}

/** An animal of which no more is kept yet than what dosing needs. */
export function newcomer(animal: Animal): HerdAnimal {
  return {
    ...animal,
    visualTags: [],
    formerTags: [],
    pen: null,
    mark: null,
    photo: null,
    kiddedAtMs: null,
    inMilkSinceMs: null,
    life: { kind: 'present' },
  };
}

/** What of an animal dosing looks at, and a treatment keeps. */
export function forDosing(animal: HerdAnimal): Animal {
  return {
    id: animal.id,
    name: animal.name,
    species: animal.species,
    class: animal.class,
    tag: animal.tag,
    inMilk: animal.inMilk,
    bornAtMs: animal.bornAtMs,
    bredAtMs: animal.bredAtMs,
    malesRemovedAtMs: animal.malesRemovedAtMs,
    lastWeight: animal.lastWeight,
  };
}

/** Whether an animal is on the farm: only those are weighed, dosed and shown. */
export function isPresent({ life }: HerdAnimal): boolean {
  return life.kind === 'present';
}
