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

/** Whether an animal is on the farm: only those are weighed, dosed and shown. */
export function isPresent({ life }: HerdAnimal): boolean {
  return life.kind === 'present';
}

/** The record that goes on where this one was merged away, else the id itself; a ring of merges ends where it began. */
export function goesOnAs(id: string, animals: ReadonlyMap<string, HerdAnimal>): string {
  const seen = new Set<string>();
  let now = id;
  while (!seen.has(now)) {
    seen.add(now);
    const life = animals.get(now)?.life;
    if (life?.kind !== 'merged') return now;
    now = life.intoId;
  }
  return id;
}
